namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The standard normal distribution, Φ.</summary>
/// <remarks>
/// Upper tail = density × Mills' ratio; relative error about 1e-15 up to x = 5 and 1e-14 out to x = 38, where
/// the tail leaves double precision. Definition: Abramowitz and Stegun 26.2.
/// </remarks>
public static class Normal
{
    private const double InverseRootTwoPi = 0.39894228040143267794;

    /// <summary>φ(x) = e^(-x²/2) / √(2π).</summary>
    /// <exception cref="ArgumentOutOfRangeException">x is NaN.</exception>
    public static double Density(double x)
    {
        Require.Number(x, "A normal deviate");
        return RawDensity(x);
    }

    /// <summary>P(Z ≤ x).</summary>
    /// <exception cref="ArgumentOutOfRangeException">x is NaN.</exception>
    public static double Cdf(double x)
    {
        Require.Number(x, "A normal deviate");
        return RawUpper(-x);
    }

    /// <summary>P(Z > x), with full relative accuracy in the far tail.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x is NaN.</exception>
    public static double Upper(double x)
    {
        Require.Number(x, "A normal deviate");
        return RawUpper(x);
    }

    /// <summary>x with P(Z ≤ x) = p.</summary>
    /// <param name="p">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is NaN or outside 0 to 1.</exception>
    public static double Quantile(double p)
    {
        Require.Probability(p);
        return p <= 0.5 ? -FromUpperHalf(p) : FromUpperHalf(1 - p);
    }

    /// <summary>x with P(Z > x) = q; exact for q far below the spacing of numbers near 1.</summary>
    /// <param name="q">Strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">q is NaN or outside 0 to 1.</exception>
    public static double UpperQuantile(double q)
    {
        Require.Probability(q);
        return q <= 0.5 ? FromUpperHalf(q) : -FromUpperHalf(1 - q);
    }

    internal static double RawUpper(double x) => x < 0
        ? 1 - RawUpper(-x)
        : x > 40 ? 0 : RawDensity(x) * MillsRatio.Of(x);

    internal static double RawDensity(double x)
    {
        if (Math.Abs(x) < 5)
        {
            return InverseRootTwoPi * Math.Exp(-0.5 * x * x);
        }

        if (Math.Abs(x) > 40)
        {
            return 0;
        }

        // The rounding error of x² would be multiplied by the large exponent; a coarse part squares exactly.
        var coarse = Math.Round(x * 16) / 16;
        return InverseRootTwoPi * Math.Exp(-0.5 * coarse * coarse) * Math.Exp(-0.5 * (x - coarse) * (x + coarse));
    }

    /// <summary>Starts at √(-2 ln 2q), never below the answer, because the tail is at most e^(-x²/2) / 2.</summary>
    private static double FromUpperHalf(double q)
    {
        if (q == 0.5)
        {
            return 0;
        }

        return ConcaveNewton.Solve(Math.Sqrt(-2 * Math.Log(2 * q)), Math.Log(q), x =>
        {
            var ratio = MillsRatio.Of(Math.Max(x, 0));
            return (Math.Log(InverseRootTwoPi * ratio) - (0.5 * x * x), -1 / ratio);
        });
    }
}
