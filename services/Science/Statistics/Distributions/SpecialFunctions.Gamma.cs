namespace LabPipeline.Science.Statistics.Distributions;

public static partial class SpecialFunctions
{
    /// <summary>P(a, x) = ∫₀ˣ t^(a-1) e^(-t) dt / Γ(a), the regularised lower incomplete gamma function.</summary>
    /// <param name="a">Above 0 and finite.</param>
    /// <param name="x">At or above 0; infinity gives 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or outside its range.</exception>
    public static double GammaLower(double a, double x)
    {
        CheckGamma(a, x);
        return x == 0 ? 0 : double.IsInfinity(x) ? 1 : GammaTails(a, x).Lower;
    }

    /// <summary>Q(a, x) = 1 - P(a, x), computed as such so that the far tail keeps its digits.</summary>
    /// <inheritdoc cref="GammaLower" path="/param|/exception"/>
    public static double GammaUpper(double a, double x)
    {
        CheckGamma(a, x);
        return x == 0 ? 1 : double.IsInfinity(x) ? 0 : GammaTails(a, x).Upper;
    }

    /// <summary>ln of x^a e^(-x) / Γ(a): the density of ln X when X is gamma(a).</summary>
    internal static double LogGammaDensity(double a, double x) =>
        (-a * SmallArguments.LogDeviance(x, a, x - a)) + (0.5 * Math.Log(a)) - HalfLogTwoPi - StirlingError(a);

    /// <summary>ln x with P(a, x) = lower and Q(a, x) = upper; the smaller of the two is the one used.</summary>
    internal static double GammaLogQuantile(double a, double lower, double upper) =>
        ConcaveNewton.Solve(Math.Log(a), Math.Log(Math.Min(lower, upper)), log => LogGammaTail(a, Math.Exp(log), lower <= upper));

    private static (double Log, double Slope) LogGammaTail(double a, double x, bool lower)
    {
        if (x < Tiny)
        {
            return ((a * Math.Log(Math.Max(x, double.Epsilon))) - LogGamma(a + 1), a);
        }

        var density = LogGammaDensity(a, x);
        var direct = GammaFraction(a, x);
        var isLower = x < a + 1;
        var ratio = isLower == lower ? direct : (1 - (direct * Math.Exp(density))) / Math.Exp(density);
        return (density + Math.Log(ratio), (lower ? 1 : -1) / ratio);
    }

    private static (double Lower, double Upper) GammaTails(double a, double x)
    {
        var part = Math.Exp(LogGammaDensity(a, x)) * GammaFraction(a, x);
        return x < a + 1 ? (part, 1 - part) : (1 - part, part);
    }

    /// <summary>The tail on the near side of x, divided by the density: P when x is below a + 1, else Q.</summary>
    private static double GammaFraction(double a, double x) => x < a + 1 ? GammaSeries(a, x) : GammaContinuedFraction(a, x);

    private static double GammaSeries(double a, double x)
    {
        var term = 1 / a;
        var sum = term;
        for (var n = 1; n < MostTerms; n++)
        {
            term *= x / (a + n);
            sum += term;
            if (term < sum * 1e-17)
            {
                return sum;
            }
        }

        throw Unsettled("gamma", a, x);
    }

    /// <summary>1/(x+1-a- 1(1-a)/(x+3-a- 2(2-a)/(x+5-a- ...))) by Lentz's forward evaluation.</summary>
    private static double GammaContinuedFraction(double a, double x)
    {
        var b = x + 1 - a;
        var c = 1 / Tiny;
        var d = 1 / b;
        var value = d;
        for (var n = 1; n < MostTerms; n++)
        {
            var numerator = -n * (n - a);
            b += 2;
            d = 1 / AwayFromZero((numerator * d) + b);
            c = AwayFromZero(b + (numerator / c));
            var factor = c * d;
            value *= factor;
            if (Math.Abs(factor - 1) < 1e-16)
            {
                return value;
            }
        }

        throw Unsettled("gamma", a, x);
    }

    private static double AwayFromZero(double value) => Math.Abs(value) < Tiny ? Tiny : value;

    private static ArithmeticException Unsettled(string function, double a, double x) =>
        new(FormattableString.Invariant($"The incomplete {function} function did not settle after {MostTerms} terms at parameter {a}, argument {x}; use the limiting distribution for parameters this large."));

    private static void CheckGamma(double a, double x)
    {
        Require.Positive(a, "The parameter of the incomplete gamma function");
        if (!(x >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(x), FormattableString.Invariant($"The argument of the incomplete gamma function must be at least 0; found {x}."));
        }
    }
}
