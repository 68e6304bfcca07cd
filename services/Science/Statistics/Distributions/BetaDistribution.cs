namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The beta distribution on 0 to 1.</summary>
/// <remarks>P(X ≤ x) = Iₓ(a, b), the regularised incomplete beta function (Abramowitz and Stegun 26.5.1).</remarks>
public static class BetaDistribution
{
    /// <summary>P(X ≤ x).</summary>
    /// <param name="x">From 0 to 1.</param>
    /// <param name="a">Above 0 and finite.</param>
    /// <param name="b">Above 0 and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or outside its range.</exception>
    public static double Cdf(double x, double a, double b) => SpecialFunctions.BetaLower(x, a, b);

    /// <summary>P(X > x), with full relative accuracy in the far tail.</summary>
    /// <inheritdoc cref="Cdf" path="/param|/exception"/>
    public static double Upper(double x, double a, double b) => SpecialFunctions.BetaUpper(x, a, b);

    /// <summary>x with P(X ≤ x) = p.</summary>
    /// <param name="p">Strictly between 0 and 1.</param>
    /// <param name="a">Above 0 and finite.</param>
    /// <param name="b">Above 0 and finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">p is outside 0 to 1, or a parameter is NaN or outside its range.</exception>
    public static double Quantile(double p, double a, double b)
    {
        Require.Probability(p);
        Require.Positive(a, "The first parameter of the beta distribution");
        Require.Positive(b, "The second parameter of the beta distribution");
        return 1 / (1 + Math.Exp(-SpecialFunctions.BetaLogOdds(p, 1 - p, a, b)));
    }
}
