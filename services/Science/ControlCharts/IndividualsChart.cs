using LabPipeline.Science.Statistics;

namespace LabPipeline.Science.ControlCharts;

/// <summary>Chart of single values with their moving ranges of two: one control result a run.</summary>
/// <remarks>
/// sigma = mean moving range / d2(2) with d2(2) = 1.128379; limits mean ± 3 sigma; moving ranges up to D4(2) = 3.2665 times their mean.
/// Source: ISO 7870-2; NIST/SEMATECH e-Handbook 6.3.2.2 (which rounds d2 to 1.128). Set up from 20 runs or more, then freeze.
/// </remarks>
public sealed record IndividualsChart
{
    private IndividualsChart(ControlLimits values, ControlLimits movingRanges)
    {
        Values = values;
        MovingRanges = movingRanges;
    }

    /// <summary>Limits of the values.</summary>
    public ControlLimits Values { get; }

    /// <summary>Limits of the moving ranges; the centre is their mean.</summary>
    public ControlLimits MovingRanges { get; }

    /// <summary>Limits from values in time order.</summary>
    /// <param name="values">Two or more, in one unit.</param>
    /// <exception cref="ArgumentException">Fewer than two values.</exception>
    /// <exception cref="NotEstimableException">All values are equal.</exception>
    public static IndividualsChart From(IReadOnlyList<decimal> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count < 2)
        {
            throw new ArgumentException($"Found {values.Count} values, expected two or more (20 for dependable limits).", nameof(values));
        }

        var constants = ControlChartConstants.For(2);
        var meanRange = values.Zip(values.Skip(1), (first, second) => Math.Abs(second - first)).Average();
        var sigma = meanRange / (decimal)constants.D2Mean;
        return new(
            ControlLimits.ThreeSigma(values.Average(), sigma),
            ControlLimits.ThreeSigma(meanRange, sigma * (decimal)constants.D3Deviation, floor: 0m));
    }
}
