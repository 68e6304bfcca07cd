using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Distributions;
using Require = LabPipeline.Science.Units.Require;

namespace LabPipeline.Science.Repeatability;

/// <summary>Mandel's h and k: consistency of groups (laboratories, days, technicians) between and within.</summary>
/// <remarks>
/// h = (mean of group - mean of means)/standard deviation of means; k = s of group/sqrt(mean s²). Critical h = (p-1) t/sqrt(p (t² + p - 2)), t two-sided with
/// p-2 degrees of freedom; critical k = sqrt(p/(1 + (p-1)/F)), F upper alpha with n-1 and (p-1)(n-1). Source: ISO 5725-2:1994, 7.3.1 (from memory).
/// </remarks>
public static class Mandel
{
    /// <summary>h and k of every group.</summary>
    /// <param name="groups">Three or more groups of two or more results each, in one unit.</param>
    /// <exception cref="ArgumentException">Too few groups or results, or a number not finite.</exception>
    /// <exception cref="NotEstimableException">All means are equal, or no group shows any spread.</exception>
    public static IReadOnlyList<MandelStatistic> Statistics(IReadOnlyList<IReadOnlyList<double>> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count < 3 || groups.Any(group => group.Count < 2))
        {
            throw new ArgumentException($"Found {groups.Count} groups, expected three or more of at least two results each.", nameof(groups));
        }

        var means = groups.Select(group => group.Average(value => Require.Finite(value, "a result"))).ToList();
        var grandMean = means.Average();
        var spread = Math.Sqrt(means.Sum(mean => (mean - grandMean) * (mean - grandMean)) / (means.Count - 1));
        var variances = groups.Select((group, index) => group.Sum(value => (value - means[index]) * (value - means[index])) / (group.Count - 1)).ToList();
        var pooled = Math.Sqrt(variances.Average());
        if (spread == 0 || pooled == 0)
        {
            throw new NotEstimableException("Mandel's statistics", spread == 0 ? "all means are equal" : "no group shows any spread");
        }

        return [.. means.Select((mean, index) => new MandelStatistic((mean - grandMean) / spread, Math.Sqrt(variances[index]) / pooled))];
    }

    /// <summary>Critical value of |h|.</summary>
    /// <param name="groups">Number of groups p, 3 or more.</param>
    /// <param name="alpha">Two-sided significance level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double CriticalH(int groups, double alpha)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 3);
        var t = StudentT.UpperQuantile(Require.Probability(alpha, nameof(alpha)) / 2, groups - 2);
        return (groups - 1) * t / Math.Sqrt(groups * ((t * t) + groups - 2));
    }

    /// <summary>Critical value of k.</summary>
    /// <param name="groups">Number of groups p, 2 or more.</param>
    /// <param name="replicates">Results per group n, 2 or more.</param>
    /// <param name="alpha">Significance level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double CriticalK(int groups, int replicates, double alpha)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(replicates, 2);
        var f = FDistribution.UpperQuantile(Require.Probability(alpha, nameof(alpha)), replicates - 1, (groups - 1) * (replicates - 1));
        return Math.Sqrt(groups / (1 + ((groups - 1) / f)));
    }
}
