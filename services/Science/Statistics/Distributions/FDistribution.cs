namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>Fisher's F distribution, the ratio of two mean squares.</summary>
/// <remarks>P(F ≤ f) = Iₓ(df1/2, df2/2) with x = df1 f / (df1 f + df2) (Abramowitz and Stegun 26.6.2).</remarks>
public static class FDistribution
{
    /// <summary>P(F ≤ f).</summary>
    /// <param name="f">Any number; at or below 0 the result is 0.</param>
    /// <param name="df1">Degrees of freedom of the numerator, above 0 and finite.</param>
    /// <param name="df2">Degrees of freedom of the denominator, above 0, infinity allowed (chi-squared / df1).</param>
    /// <exception cref="ArgumentOutOfRangeException">f is NaN, or a df is NaN or outside its range.</exception>
    public static double Cdf(double f, double df1, double df2) => Tails(f, df1, df2).Lower;

    /// <summary>P(F > f), the p value of an F test, with full relative accuracy in the far tail.</summary>
    /// <inheritdoc cref="Cdf" path="/param|/exception"/>
    public static double Upper(double f, double df1, double df2) => Tails(f, df1, df2).Upper;

    /// <summary>f with P(F ≤ f) = p.</summary>
    /// <param name="p">Strictly between 0 and 1.</param>
    /// <param name="df1">Degrees of freedom of the numerator, above 0 and finite.</param>
    /// <param name="df2">Degrees of freedom of the denominator, above 0, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is outside 0 to 1, or a df is NaN or outside its range.</exception>
    public static double Quantile(double p, double df1, double df2)
    {
        Require.Probability(p);
        return FromTails(p, 1 - p, df1, df2);
    }

    /// <summary>f with P(F > f) = q: the critical value at q = alpha.</summary>
    /// <param name="q">Strictly between 0 and 1.</param>
    /// <param name="df1">Degrees of freedom of the numerator, above 0 and finite.</param>
    /// <param name="df2">Degrees of freedom of the denominator, above 0, infinity allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">q is outside 0 to 1, or a df is NaN or outside its range.</exception>
    public static double UpperQuantile(double q, double df1, double df2)
    {
        Require.Probability(q);
        return FromTails(1 - q, q, df1, df2);
    }

    private static (double Lower, double Upper) Tails(double f, double df1, double df2)
    {
        Require.Number(f, "An F value");
        CheckDegrees(df1, df2);
        if (f <= 0)
        {
            return (0, 1);
        }

        if (double.IsPositiveInfinity(df2))
        {
            return (ChiSquared.Cdf(f * df1, df1), ChiSquared.Upper(f * df1, df1));
        }

        var odds = f * (df1 / df2);
        return double.IsInfinity(odds)
            ? (1, 0)
            : SpecialFunctions.BetaTails(odds / (1 + odds), 1 / (1 + odds), 0.5 * df1, 0.5 * df2);
    }

    private static double FromTails(double lower, double upper, double df1, double df2)
    {
        CheckDegrees(df1, df2);
        return double.IsPositiveInfinity(df2)
            ? 2 * Math.Exp(SpecialFunctions.GammaLogQuantile(0.5 * df1, lower, upper)) / df1
            : df2 / df1 * Math.Exp(SpecialFunctions.BetaLogOdds(lower, upper, 0.5 * df1, 0.5 * df2));
    }

    private static void CheckDegrees(double df1, double df2)
    {
        Require.Positive(df1, "Degrees of freedom of the numerator");
        Require.DegreesOfFreedom(df2);
    }
}
