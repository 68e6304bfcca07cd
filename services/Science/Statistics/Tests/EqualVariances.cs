using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Statistics.Tests;

/// <summary>Do several groups have equal variances?</summary>
public static class EqualVariances
{
    /// <summary>One-way analysis of variance of |x - median of its group|: F on k - 1 and N - k (Brown and Forsythe 1974). Bears skewed data.</summary>
    /// <param name="groups">At least two groups, each with at least two finite values.</param>
    /// <exception cref="ArgumentException">Too few groups or values, or a value that is not finite.</exception>
    /// <exception cref="NotEstimableException">The distances from the median do not vary inside any group.</exception>
    public static TestOutcome BrownForsythe(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        Sample.CheckGroups(groups, 2);
        var distances = groups.Select(DistancesFromMedian).ToArray();
        if (distances.All(Sample.AllEqual))
        {
            throw new NotEstimableException("The Brown-Forsythe F", "inside every group all distances from the median are equal");
        }

        var anova = OneWayAnova.Of(distances);
        return new TestOutcome("Brown-Forsythe (Levene at the median)", anova.F, anova.DfBetween, anova.DfWithin, anova.P);
    }

    /// <summary>
    /// Bartlett's K² = [(N - k) ln s² - Σ(nᵢ - 1) ln sᵢ²] / C on k - 1 degrees of freedom, with
    /// C = 1 + [Σ 1/(nᵢ - 1) - 1/(N - k)] / [3(k - 1)] (Bartlett 1937). Assumes normal values.
    /// </summary>
    /// <param name="groups">At least two groups, each with at least two finite values.</param>
    /// <exception cref="ArgumentException">Too few groups or values, or a value that is not finite.</exception>
    /// <exception cref="NotEstimableException">A group has no variance, so its logarithm does not exist.</exception>
    public static TestOutcome Bartlett(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        Sample.CheckGroups(groups, 2);
        var moments = groups.Select(Moments.Of).ToArray();
        var flat = Array.FindIndex(moments, group => group.SumOfSquares == 0);
        if (flat >= 0)
        {
            throw new NotEstimableException("Bartlett's K²", Sample.Text($"all {moments[flat].Count} values of group {flat + 1} are equal"));
        }

        double df = moments.Sum(group => group.Count - 1);
        var pooled = moments.Sum(group => group.SumOfSquares) / df;
        // ln of the ratio, group by group, so that nearly equal variances do not cancel.
        var spread = moments.Sum(group => (group.Count - 1) * Math.Log(pooled / group.Variance));
        var correction = 1 + ((moments.Sum(group => 1.0 / (group.Count - 1)) - (1 / df)) / (3 * (groups.Count - 1)));
        var statistic = spread / correction;
        return new TestOutcome("Bartlett", statistic, groups.Count - 1, null, ChiSquared.Upper(statistic, groups.Count - 1));
    }

    private static double[] DistancesFromMedian(IReadOnlyList<double> values)
    {
        var sorted = values.Order().ToArray();
        var half = sorted.Length / 2;
        var median = sorted.Length % 2 == 1 ? sorted[half] : sorted[half - 1] + (0.5 * (sorted[half] - sorted[half - 1]));
        return [.. values.Select(value => Math.Abs(value - median))];
    }
}
