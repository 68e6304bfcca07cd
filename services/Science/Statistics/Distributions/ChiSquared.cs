namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The chi-squared distribution.</summary>
/// <remarks>P(X ≤ x) = P(df/2, x/2), the regularised incomplete gamma function (Abramowitz and Stegun 26.4.19).</remarks>
public static class ChiSquared
{
    /// <summary>P(X ≤ x).</summary>
    /// <param name="x">Any number; at or below 0 the result is 0.</param>
    /// <param name="df">Above 0 and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">x is NaN, or df is NaN or outside its range.</exception>
    public static double Cdf(double x, double df)
    {
        Check(x, df);
        return x <= 0 ? 0 : SpecialFunctions.GammaLower(0.5 * df, 0.5 * x);
    }

    /// <summary>P(X > x), with full relative accuracy in the far tail.</summary>
    /// <inheritdoc cref="Cdf" path="/param|/exception"/>
    public static double Upper(double x, double df)
    {
        Check(x, df);
        return x <= 0 ? 1 : SpecialFunctions.GammaUpper(0.5 * df, 0.5 * x);
    }

    /// <summary>x with P(X ≤ x) = p.</summary>
    /// <param name="p">Strictly between 0 and 1.</param>
    /// <param name="df">Above 0 and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is outside 0 to 1, or df is NaN or outside its range.</exception>
    public static double Quantile(double p, double df)
    {
        Require.Probability(p);
        Require.Positive(df, "Degrees of freedom");
        return 2 * Math.Exp(SpecialFunctions.GammaLogQuantile(0.5 * df, p, 1 - p));
    }

    /// <summary>x with P(X > x) = q.</summary>
    /// <param name="q">Strictly between 0 and 1.</param>
    /// <param name="df">Above 0 and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">q is outside 0 to 1, or df is NaN or outside its range.</exception>
    public static double UpperQuantile(double q, double df)
    {
        Require.Probability(q);
        Require.Positive(df, "Degrees of freedom");
        return 2 * Math.Exp(SpecialFunctions.GammaLogQuantile(0.5 * df, 1 - q, q));
    }

    private static void Check(double x, double df)
    {
        Require.Number(x, "A chi-squared value");
        Require.Positive(df, "Degrees of freedom");
    }
}
