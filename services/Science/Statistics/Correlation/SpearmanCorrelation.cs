using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Correlation;

/// <summary>Rank correlation: does y rise steadily with x, straight or not?</summary>
public static class SpearmanCorrelation
{
    /// <summary>
    /// Pearson's coefficient of the mid-ranks. p by t on n - 2, an approximation below about 10 pairs; for a perfect relation t
    /// is infinite and p is the exact share of orderings as perfect, 2 Π(tie size)! / n!. Interval on Fisher's scale with variance
    /// (1 + ρ²/2) / (n - 3) (Bonett and Wright 2000, Psychometrika 65:23, formula from memory).
    /// </summary>
    /// <param name="x">At least 3 finite values.</param>
    /// <param name="y">As many, on the same plots in the same order.</param>
    /// <param name="alpha">1 - confidence of the interval, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">Too few values, unequal counts, a value that is not finite, alpha outside its range.</exception>
    /// <exception cref="NotEstimableException">All x or all y are equal.</exception>
    public static CorrelationEstimate Of(IReadOnlyList<double> x, IReadOnlyList<double> y, double alpha)
    {
        Require.Probability(alpha);
        Sample.CheckPair(x, y, 3);
        var ranked = MidRanks.Of(x);
        var rho = Products.Of(ranked.Ranks, MidRanks.Of(y).Ranks, 3, "The rank correlation").Coefficient;
        var df = x.Count - 2;
        var t = rho * Math.Sqrt(df / ((1 - rho) * (1 + rho)));
        var p = double.IsInfinity(t) ? PerfectByChance(ranked.Ties, x.Count) : StudentT.TwoSided(t, df);
        return new CorrelationEstimate("Spearman", x.Count, rho, t, df, p, PearsonCorrelation.Fisher(rho, x.Count, 1 + (rho * rho / 2), alpha));
    }

    private static double PerfectByChance(IReadOnlyList<int> ties, int n) =>
        Math.Min(1, 2 * Math.Exp(ties.Sum(size => SpecialFunctions.LogGamma(size + 1)) - SpecialFunctions.LogGamma(n + 1)));
}
