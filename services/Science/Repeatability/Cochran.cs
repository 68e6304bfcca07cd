using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Distributions;
using Require = LabPipeline.Science.Units.Require;

namespace LabPipeline.Science.Repeatability;

/// <summary>Cochran's test for one group whose spread is too large: a laboratory, day or instrument.</summary>
/// <remarks>
/// C = s²max / sum s²; critical C = F/(F + p - 1) with F the upper alpha/p quantile for n-1 and (p-1)(n-1) degrees of freedom, an upper bound exact to four
/// decimals at usual levels. Source: Cochran 1941; ISO 5725-2:1994, 7.3.3 (5 % straggler, 1 % outlier).
/// </remarks>
public static class Cochran
{
    /// <summary>Tests the largest of p standard deviations from n results each.</summary>
    /// <param name="standardDeviations">Two or more, zero or more each, in one unit.</param>
    /// <param name="replicates">Results per group n, 2 or more, the same in every group.</param>
    /// <param name="alpha">Significance level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">Too few groups or replicates, or a number not finite.</exception>
    /// <exception cref="NotEstimableException">All standard deviations are zero.</exception>
    public static OutlierVerdict Test(IReadOnlyList<double> standardDeviations, int replicates, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(standardDeviations);
        var critical = CriticalValue(standardDeviations.Count, replicates, alpha);
        var variances = standardDeviations.Select(deviation => Math.Pow(Require.NotNegative(deviation, "a standard deviation"), 2)).ToList();
        var total = variances.Sum();
        if (total == 0)
        {
            throw new NotEstimableException("Cochran's statistic", $"all {variances.Count} standard deviations are zero");
        }

        var (largest, index) = variances.Select((variance, position) => (variance, position)).Max();
        return new OutlierVerdict(index, largest / total, critical);
    }

    /// <summary>Critical value of C.</summary>
    /// <param name="groups">Number of groups p, 2 or more.</param>
    /// <param name="replicates">Results per group n, 2 or more.</param>
    /// <param name="alpha">Significance level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double CriticalValue(int groups, int replicates, double alpha)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        ArgumentOutOfRangeException.ThrowIfLessThan(replicates, 2);
        var f = FDistribution.UpperQuantile(Require.Probability(alpha, nameof(alpha)) / groups, replicates - 1, (groups - 1) * (replicates - 1));
        return f / (f + groups - 1);
    }
}
