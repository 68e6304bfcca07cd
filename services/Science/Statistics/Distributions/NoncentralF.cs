namespace LabPipeline.Science.Statistics.Distributions;

/// <summary>The noncentral F distribution: the F ratio when the treatments do differ, for power and sample size.</summary>
/// <remarks>
/// A Poisson(λ/2) mixture of beta distributions: P(F ≤ f) = Σⱼ e^(-λ/2) (λ/2)ʲ / j! · Iₓ(df1/2 + j, df2/2) with
/// x = df1 f / (df1 f + df2) (Abramowitz and Stegun 26.6.18). The square of a noncentral t has df1 = 1, λ = δ².
/// Summed outwards from the largest weight; absolute error below 1e-12.
/// </remarks>
public static class NoncentralF
{
    private const double MostNoncentrality = 1e6;

    /// <summary>P(F ≤ f).</summary>
    /// <param name="f">Any number; at or below 0 the result is 0.</param>
    /// <param name="df1">Degrees of freedom of the numerator, above 0 and finite.</param>
    /// <param name="df2">Degrees of freedom of the denominator, above 0 and finite.</param>
    /// <param name="noncentrality">λ, from 0 to 1e6; 0 is the ordinary F.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is NaN or outside its range.</exception>
    public static double Cdf(double f, double df1, double df2, double noncentrality) => Mix(f, df1, df2, noncentrality, lower: true);

    /// <summary>P(F > f): the power, when f is the critical value.</summary>
    /// <inheritdoc cref="Cdf" path="/param|/exception"/>
    public static double Upper(double f, double df1, double df2, double noncentrality) => Mix(f, df1, df2, noncentrality, lower: false);

    private static double Mix(double f, double df1, double df2, double noncentrality, bool lower)
    {
        Require.Number(f, "An F value");
        Require.Positive(df1, "Degrees of freedom of the numerator");
        Require.Positive(df2, "Degrees of freedom of the denominator");
        if (!(noncentrality >= 0 && noncentrality <= MostNoncentrality))
        {
            throw new ArgumentOutOfRangeException(nameof(noncentrality), FormattableString.Invariant($"The noncentrality must lie from 0 to {MostNoncentrality}; found {noncentrality}."));
        }

        var odds = f * (df1 / df2);
        if (odds <= 0 || double.IsInfinity(odds))
        {
            return (odds > 0) == lower ? 1 : 0;
        }

        var (x, y) = (odds / (1 + odds), 1 / (1 + odds));
        return Math.Min(1, PoissonMean(0.5 * noncentrality, j =>
        {
            var (below, above) = SpecialFunctions.BetaTails(x, y, (0.5 * df1) + j, 0.5 * df2);
            return lower ? below : above;
        }));
    }

    /// <summary>Mean of a bounded function of a Poisson count, outwards from the likeliest count.</summary>
    private static double PoissonMean(double mean, Func<int, double> value)
    {
        var peak = (int)mean;
        var top = mean == 0 ? 1 : Math.Exp((peak * Math.Log(mean)) - mean - SpecialFunctions.LogGamma(peak + 1));
        var sum = 0.0;
        var weight = top;
        for (var j = peak; weight > 1e-18 * top; j++, weight *= mean / j)
        {
            sum += weight * value(j);
        }

        weight = top * peak / Math.Max(mean, double.Epsilon);
        for (var j = peak - 1; j >= 0 && weight > 1e-18 * top; weight *= j / mean, j--)
        {
            sum += weight * value(j);
        }

        return sum;
    }
}
