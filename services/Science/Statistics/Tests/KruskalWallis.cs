using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Tests;

/// <summary>Do several groups come from one distribution? A test on ranks, for scores and badly skewed values.</summary>
public static class KruskalWallis
{
    /// <summary>
    /// H = 12/(N(N+1)) Σ nᵢ (mean rank of group i - (N+1)/2)², divided by 1 - Σ(t³ - t)/(N³ - N) for ties; chi-squared on
    /// k - 1 degrees of freedom (Kruskal and Wallis 1952). The p value is approximate: read it with care below 5 values a group.
    /// </summary>
    /// <param name="groups">At least two groups, each with at least one finite value.</param>
    /// <exception cref="ArgumentException">Too few groups, an empty group, or a value that is not finite.</exception>
    /// <exception cref="NotEstimableException">All values are equal.</exception>
    public static TestOutcome Of(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        Sample.CheckGroups(groups, 1);
        var all = groups.SelectMany(group => group).ToArray();
        if (Sample.AllEqual(all))
        {
            throw new NotEstimableException("The Kruskal-Wallis H", Sample.Text($"all {all.Length} values are equal to {all[0]}"));
        }

        double n = all.Length;
        var ranked = MidRanks.Of(all);
        var (start, squares) = (0, 0.0);
        foreach (var group in groups)
        {
            var away = ranked.Ranks.Skip(start).Take(group.Count).Average() - ((n + 1) / 2);
            squares += group.Count * away * away;
            start += group.Count;
        }

        var ties = ranked.Ties.Sum(size => (Math.Pow(size, 3) - size) / ((n * n * n) - n));
        var statistic = 12 / (n * (n + 1)) * squares / (1 - ties);
        return new TestOutcome("Kruskal-Wallis", statistic, groups.Count - 1, null, ChiSquared.Upper(statistic, groups.Count - 1));
    }
}
