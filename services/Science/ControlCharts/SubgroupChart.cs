using LabPipeline.Science.Statistics;
using LabPipeline.Science.Units;

namespace LabPipeline.Science.ControlCharts;

/// <summary>Chart of subgroup means with a chart of their spread: X-bar and R, or X-bar and s.</summary>
/// <remarks>
/// Means: grand mean ± A2 R-bar or ± A3 s-bar. Ranges: D3 R-bar to D4 R-bar. Standard deviations: B3 s-bar to B4 s-bar. Source: ISO 7870-2.
/// </remarks>
public sealed record SubgroupChart
{
    private SubgroupChart(ControlLimits means, ControlLimits spreads)
    {
        Means = means;
        Spreads = spreads;
    }

    /// <summary>Limits of the subgroup means.</summary>
    public ControlLimits Means { get; }

    /// <summary>Limits of the subgroup ranges or standard deviations.</summary>
    public ControlLimits Spreads { get; }

    /// <summary>X-bar and R.</summary>
    /// <param name="subgroups">Two or more subgroups of one size, 2 to 25.</param>
    /// <exception cref="ArgumentException">Too few subgroups, or sizes differ or are out of range.</exception>
    /// <exception cref="NotEstimableException">No subgroup shows any spread.</exception>
    public static SubgroupChart FromRanges(IReadOnlyList<IReadOnlyList<decimal>> subgroups)
    {
        var constants = Check(subgroups);
        return Chart(subgroups, Range, (decimal)constants.D2Mean, (decimal)constants.D3Deviation);
    }

    /// <summary>X-bar and s.</summary>
    /// <param name="subgroups">Two or more subgroups of one size, 2 to 25.</param>
    /// <exception cref="ArgumentException">Too few subgroups, or sizes differ or are out of range.</exception>
    /// <exception cref="NotEstimableException">No subgroup shows any spread.</exception>
    public static SubgroupChart FromDeviations(IReadOnlyList<IReadOnlyList<decimal>> subgroups)
    {
        var constants = Check(subgroups);
        return Chart(subgroups, Deviation, (decimal)constants.C4, (decimal)Math.Sqrt(1 - (constants.C4 * constants.C4)));
    }

    private static SubgroupChart Chart(
        IReadOnlyList<IReadOnlyList<decimal>> subgroups, Func<IReadOnlyList<decimal>, decimal> spread, decimal meanPerSigma, decimal deviationPerSigma)
    {
        var meanSpread = subgroups.Average(spread);
        var sigma = meanSpread / meanPerSigma;
        return new(
            ControlLimits.ThreeSigma(subgroups.Average(subgroup => subgroup.Average()), sigma / DecimalRoot.Sqrt(subgroups[0].Count)),
            ControlLimits.ThreeSigma(meanSpread, sigma * deviationPerSigma, floor: 0m));
    }

    private static ControlChartConstants Check(IReadOnlyList<IReadOnlyList<decimal>> subgroups)
    {
        ArgumentNullException.ThrowIfNull(subgroups);
        if (subgroups.Count < 2 || subgroups.Any(subgroup => subgroup.Count != subgroups[0].Count))
        {
            var sizes = string.Join(", ", subgroups.Select(subgroup => subgroup.Count).Distinct());
            throw new ArgumentException($"Found {subgroups.Count} subgroups of {sizes} results, expected two or more of one size.", nameof(subgroups));
        }

        return ControlChartConstants.For(subgroups[0].Count);
    }

    private static decimal Range(IReadOnlyList<decimal> results) => results.Max() - results.Min();

    private static decimal Deviation(IReadOnlyList<decimal> results)
    {
        var mean = results.Average();
        return DecimalRoot.Sqrt(results.Sum(result => (result - mean) * (result - mean)) / (results.Count - 1));
    }
}
