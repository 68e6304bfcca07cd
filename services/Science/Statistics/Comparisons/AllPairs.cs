using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>All pairwise differences, each as the later mean less the earlier one.</summary>
public static class AllPairs
{
    /// <summary>
    /// Tukey's HSD, or Tukey-Kramer where the SEDs differ: q = √2 |difference| / SED against the studentised range of all the
    /// means (Tukey 1953, Kramer 1956). The claim for all pairs together holds at alpha; conservative with unequal SEDs.
    /// </summary>
    /// <param name="means">The means.</param>
    /// <param name="alpha">Level for the whole set, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">alpha is outside its range, or a df is below 1.</exception>
    public static ComparisonSet Tukey(ComparedMeans means, double alpha)
    {
        ArgumentNullException.ThrowIfNull(means);
        Require.Probability(alpha);
        var known = new Dictionary<double, (RangeTails Tails, double Critical)>();
        return new ComparisonSet("Tukey HSD", alpha, $"All together with {Percent(alpha)} % confidence", true, Pairs(means, (difference, precision) =>
        {
            var df = Math.Round(precision.Df, ComparedMeans.DfDecimals);
            if (!known.TryGetValue(df, out var range))
            {
                var tails = new RangeTails(means.Count, df);
                known[df] = range = (tails, tails.Quantile(1 - alpha, alpha));
            }

            var statistic = Math.Sqrt(2) * Math.Abs(difference) / precision.Sed;
            return (statistic, range.Tails.Upper(statistic), range.Critical / Math.Sqrt(2));
        }));
    }

    /// <summary>
    /// Fisher's protected LSD: t tests of all pairs, which count only when the overall F test is significant at alpha. Holds
    /// the error of each pair, not of the set, at alpha; with more than three means prefer Tukey.
    /// </summary>
    /// <param name="means">The means.</param>
    /// <param name="overall">The F test of these means against their error term.</param>
    /// <param name="alpha">Level of the F test and of each pair, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">alpha or the F test is outside its range.</exception>
    public static ComparisonSet ProtectedLsd(ComparedMeans means, OverallTest overall, double alpha)
    {
        var p = FDistribution.Upper(overall.F, overall.Df1, overall.Df2);
        var open = p <= alpha;
        var label = open
            ? Sample.Text($"Fisher LSD protected by F (p = {p:G3})")
            : Sample.Text($"Fisher LSD protected by F: F is not significant (p = {p:G3}), so no pair is called different");
        return Unadjusted(means, alpha) with { Procedure = label, MayDeclare = open };
    }

    /// <summary>t tests of all pairs with p values adjusted for their number; no F test protects them.</summary>
    /// <param name="means">The means.</param>
    /// <param name="adjustment">None is Fisher's LSD without protection and is labelled so.</param>
    /// <param name="alpha">Level, strictly between 0 and 1.</param>
    /// <returns>Bonferroni intervals hold together; those of the other adjustments are single ones.</returns>
    /// <exception cref="ArgumentOutOfRangeException">alpha is outside its range.</exception>
    public static ComparisonSet Adjusted(ComparedMeans means, PValueAdjustment adjustment, double alpha)
    {
        if (adjustment == PValueAdjustment.None)
        {
            return Unadjusted(means, alpha);
        }

        ArgumentNullException.ThrowIfNull(means);
        Require.Probability(alpha);
        var together = adjustment == PValueAdjustment.Bonferroni;
        var count = means.Count * (means.Count - 1) / 2;
        var plain = Unadjusted(means, together ? alpha / count : alpha);
        var adjusted = AdjustedPValues.Of([.. plain.Comparisons.Select(pair => pair.P)], adjustment);
        return new ComparisonSet(
            $"t tests, {Name(adjustment)}",
            alpha,
            $"{(together ? "All together" : "Each alone")} with {Percent(alpha)} % confidence",
            true,
            [.. plain.Comparisons.Select((pair, index) => pair with { P = adjusted[index] })]);
    }

    private static ComparisonSet Unadjusted(ComparedMeans means, double alpha)
    {
        ArgumentNullException.ThrowIfNull(means);
        Require.Probability(alpha);
        return new ComparisonSet("Fisher LSD, not protected", alpha, $"Each alone with {Percent(alpha)} % confidence", true, Pairs(means, (difference, precision) =>
        {
            var t = difference / precision.Sed;
            return (t, StudentT.TwoSided(t, precision.Df), StudentT.UpperQuantile(alpha / 2, precision.Df));
        }));
    }

    private static List<PairComparison> Pairs(ComparedMeans means, Func<double, PairPrecision, (double Statistic, double P, double Critical)> judge)
    {
        var pairs = new List<PairComparison>();
        for (var second = 0; second < means.Count; second++)
        {
            for (var first = second + 1; first < means.Count; first++)
            {
                var difference = means.Difference(first, second);
                var precision = means.Precision(first, second);
                var (statistic, p, critical) = judge(difference, precision);
                var half = critical * precision.Sed;
                pairs.Add(new PairComparison(
                    first, second, $"{means.Means[first].Label} - {means.Means[second].Label}", difference,
                    precision.Sed, precision.Df, statistic, p, difference - half, difference + half));
            }
        }

        return pairs;
    }

    private static string Name(PValueAdjustment adjustment) =>
        adjustment == PValueAdjustment.BenjaminiHochberg ? "Benjamini-Hochberg false discovery rate" : adjustment.ToString();

    private static string Percent(double alpha) => Sample.Text($"{100 * (1 - alpha):0.##}");
}
