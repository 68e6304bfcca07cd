namespace LabPipeline.Science.Statistics.Distributions;

public static partial class SpecialFunctions
{
    /// <summary>Iₓ(a, b) = ∫₀ˣ t^(a-1) (1-t)^(b-1) dt / B(a, b), the regularised incomplete beta function.</summary>
    /// <param name="x">From 0 to 1.</param>
    /// <param name="a">Above 0 and finite.</param>
    /// <param name="b">Above 0 and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or outside its range.</exception>
    public static double BetaLower(double x, double a, double b)
    {
        CheckBeta(x, a, b);
        return BetaTails(x, 1 - x, a, b).Lower;
    }

    /// <summary>1 - Iₓ(a, b), computed as such so that the far tail keeps its digits.</summary>
    /// <inheritdoc cref="BetaLower" path="/param|/exception"/>
    public static double BetaUpper(double x, double a, double b)
    {
        CheckBeta(x, a, b);
        return BetaTails(x, 1 - x, a, b).Upper;
    }

    /// <summary>Both tails from x and its complement y, which callers know more exactly than 1 - x.</summary>
    internal static (double Lower, double Upper) BetaTails(double x, double y, double a, double b)
    {
        if (x <= 0)
        {
            return (0, 1);
        }

        if (y <= 0)
        {
            return (1, 0);
        }

        var density = Math.Exp(LogBetaDensity(x, y, a, b));
        if (IsNearSide(x, a, b))
        {
            var lower = density * BetaContinuedFraction(x, y, a, b);
            return (lower, 1 - lower);
        }

        var upper = density * BetaContinuedFraction(y, x, b, a);
        return (1 - upper, upper);
    }

    /// <summary>ln(x / y) with Iₓ(a, b) = lower and 1 - Iₓ(a, b) = upper; the smaller of the two is the one used.</summary>
    internal static double BetaLogOdds(double lower, double upper, double a, double b) => lower <= upper
        ? ConcaveNewton.Solve(Math.Log(a / b), Math.Log(lower), odds => LogBetaLower(odds, a, b))
        : -BetaLogOdds(upper, lower, b, a);

    /// <summary>ln of x^a y^b / B(a, b): the density of the log odds ln(x / y).</summary>
    internal static double LogBetaDensity(double x, double y, double a, double b)
    {
        var total = a + b;
        var meanX = a / total;
        var meanY = b / total;
        var away = AwayFromMean(x, y, a, b);
        return (-a * SmallArguments.LogDeviance(x, meanX, away)) - (b * SmallArguments.LogDeviance(y, meanY, -away))
            + (0.5 * Math.Log(a * meanY)) - HalfLogTwoPi - StirlingError(a) - StirlingError(b) + StirlingError(total);
    }

    private static (double Log, double Slope) LogBetaLower(double odds, double a, double b)
    {
        var x = 1 / (1 + Math.Exp(-odds));
        var y = 1 / (1 + Math.Exp(odds));
        if (x < Tiny)
        {
            return ((a * odds) - Math.Log(a) - LogBeta(a, b), a);
        }

        var density = LogBetaDensity(x, y, a, b);
        var ratio = IsNearSide(x, a, b)
            ? BetaContinuedFraction(x, y, a, b)
            : Math.Exp(-density) - BetaContinuedFraction(y, x, b, a);
        return (density + Math.Log(ratio), 1 / ratio);
    }

    private static bool IsNearSide(double x, double a, double b) => x < (a + 1) / (a + b + 2);

    /// <summary>
    /// I / density as 1/(β₀ + α₁/(β₁ + α₂/(β₂ + ...))), the even part of the fraction of Abramowitz and Stegun 26.5.8, by
    /// Lentz's forward evaluation. Written in x and y it has no 1 - x to lose digits when x is near 1 and a is large.
    /// </summary>
    private static double BetaContinuedFraction(double x, double y, double a, double b)
    {
        var fromMean = (a + b) * AwayFromMean(x, y, a, b);
        var denominator = a * (1 - fromMean) / (a + 1);
        var value = denominator;
        var c = denominator;
        var d = 0.0;
        for (var m = 1; m < MostTerms; m++)
        {
            var odd = a + (2 * m) - 1;
            var shared = m * (b - m) * x / odd;
            var alpha = (a + m - 1) * (a + b + m - 1) * shared * x / odd;
            denominator = m + shared + ((a + m) * (1 - fromMean + (m * (1 + y))) / (odd + 2));
            d = 1 / AwayFromZero(denominator + (alpha * d));
            c = AwayFromZero(denominator + (alpha / c));
            var factor = c * d;
            value *= factor;
            if (Math.Abs(factor - 1) < 2e-16)
            {
                return 1 / value;
            }
        }

        throw Unsettled("beta", a, x);
    }

    /// <summary>x less its mean a / (a + b), from whichever of x and y is the more exact.</summary>
    private static double AwayFromMean(double x, double y, double a, double b) => a <= b ? x - (a / (a + b)) : (b / (a + b)) - y;

    private static void CheckBeta(double x, double a, double b)
    {
        Require.Positive(a, "The first parameter of the incomplete beta function");
        Require.Positive(b, "The second parameter of the incomplete beta function");
        if (!(x >= 0 && x <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(x), FormattableString.Invariant($"The argument of the incomplete beta function must lie from 0 to 1; found {x}."));
        }
    }
}
