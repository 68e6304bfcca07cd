using LabPipeline.Science.Statistics;
using LabPipeline.Science.Units;

namespace LabPipeline.Science.ControlCharts;

/// <summary>Charts of counts: c, u and p.</summary>
/// <remarks>
/// c: c-bar ± 3 sqrt(c-bar). u: u-bar ± 3 sqrt(u-bar/units). p: p-bar ± 3 sqrt(p-bar (1 - p-bar)/n). Lower limits below zero are zero, upper limits of p
/// above one are one. Poisson and binomial spread are assumed: chips of one tuber are alike and make real spread larger.
/// Sources: ISO 7870-2; NIST/SEMATECH e-Handbook 6.3.3.
/// </remarks>
public static class AttributeChart
{
    /// <summary>c chart: limits for counts in equal areas of opportunity.</summary>
    /// <param name="counts">Two or more counts of zero or more.</param>
    /// <exception cref="ArgumentException">Too few, or a negative count.</exception>
    /// <exception cref="NotEstimableException">All counts are zero.</exception>
    public static ControlLimits Counts(IReadOnlyList<int> counts)
    {
        RequireTwo(counts);
        var centre = counts.Average(count => (decimal)Require.NotNegative(count, "a count"));
        return ControlLimits.ThreeSigma(centre, DecimalRoot.Sqrt(centre), floor: 0m);
    }

    /// <summary>u chart: limits for each count per unit, where the number of units differs.</summary>
    /// <param name="samples">Two or more pairs of a count and the units it was found in, above zero.</param>
    /// <exception cref="ArgumentException">Too few, or a value out of range.</exception>
    /// <exception cref="NotEstimableException">All counts are zero.</exception>
    public static IReadOnlyList<ControlLimits> CountsPerUnit(IReadOnlyList<(int Count, decimal Units)> samples)
    {
        RequireTwo(samples);
        var centre = samples.Sum(sample => (decimal)Require.NotNegative(sample.Count, "a count"))
            / samples.Sum(sample => Require.Positive(sample.Units, "a number of units"));
        return [.. samples.Select(sample => ControlLimits.ThreeSigma(centre, DecimalRoot.Sqrt(centre / sample.Units), floor: 0m))];
    }

    /// <summary>p chart: limits for each share of defective items.</summary>
    /// <param name="samples">Two or more pairs of defective and inspected items.</param>
    /// <exception cref="ArgumentException">Too few, or more defective than inspected items.</exception>
    /// <exception cref="NotEstimableException">No item, or every item, is defective.</exception>
    public static IReadOnlyList<ControlLimits> Shares(IReadOnlyList<(int Defective, int Inspected)> samples)
    {
        RequireTwo(samples);
        var centre = samples.Sum(sample => (decimal)Require.Between(sample.Defective, 0, sample.Inspected, "a number of defective items"))
            / samples.Sum(sample => Require.Positive(sample.Inspected, "a number of inspected items"));
        return [.. samples.Select(sample => ControlLimits.ThreeSigma(centre, DecimalRoot.Sqrt(centre * (1m - centre) / sample.Inspected), 0m, 1m))];
    }

    private static void RequireTwo<T>(IReadOnlyList<T> samples)
    {
        ArgumentNullException.ThrowIfNull(samples);
        if (samples.Count < 2)
        {
            throw new ArgumentException($"Found {samples.Count} samples, expected two or more.", nameof(samples));
        }
    }
}
