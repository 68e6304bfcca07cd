using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Distributions;
using Require = LabPipeline.Science.Units.Require;

namespace LabPipeline.Science.Repeatability;

/// <summary>Grubbs' test for one outlying value among n normal results.</summary>
/// <remarks>
/// G = |x - mean| / s; critical G = (n-1)/sqrt(n) sqrt(t²/(n-2+t²)) with t of n-2 degrees of freedom at alpha/n (one-sided) or alpha/(2n) (two-sided).
/// Sources: Grubbs 1950 and 1969 (Technometrics 11:1-21); ISO 5725-2 uses the two-sided 5 % (straggler) and 1 % (outlier) values. One outlier
/// at a time: repeated use on the same data raises the false-alarm rate.
/// </remarks>
public static class Grubbs
{
    /// <summary>Two-sided test of the value farthest from the mean.</summary>
    /// <param name="values">Three or more results in one unit.</param>
    /// <param name="alpha">Significance level, strictly between 0 and 1.</param>
    /// <exception cref="ArgumentException">Fewer than three values, or a number not finite.</exception>
    /// <exception cref="NotEstimableException">All values are equal.</exception>
    public static OutlierVerdict Test(IReadOnlyList<double> values, double alpha = 0.05)
    {
        ArgumentNullException.ThrowIfNull(values);
        var critical = CriticalValue(values.Count, alpha, twoSided: true);
        var mean = values.Average(value => Require.Finite(value, "a result"));
        var deviation = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
        if (values.All(value => value == values[0]))
        {
            throw new NotEstimableException("Grubbs' statistic", $"all {values.Count} values are equal");
        }

        var (farthest, index) = values.Select((value, position) => (Math.Abs(value - mean), position)).Max();
        return new OutlierVerdict(index, farthest / deviation, critical);
    }

    /// <summary>Critical value of G.</summary>
    /// <param name="count">Number of values n, 3 or more.</param>
    /// <param name="alpha">Significance level, strictly between 0 and 1.</param>
    /// <param name="twoSided">Whether the outlier may lie on either side.</param>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double CriticalValue(int count, double alpha, bool twoSided)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        var t = StudentT.UpperQuantile(Require.Probability(alpha, nameof(alpha)) / (twoSided ? 2.0 * count : count), count - 2);
        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + (t * t)));
    }
}
