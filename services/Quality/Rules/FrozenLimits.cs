using System.Text.Json;
using LabPipeline.Science.ControlCharts;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Rules;

/// <summary>Limits from a laboratory's own runs: individuals with moving ranges of two (ISO 7870-2), one point a run.</summary>
/// <remarks>The opening control stands for its run: taking all of them would hide the spread between days, and the limits would be too narrow.</remarks>
public static class FrozenLimits
{
    /// <param name="openings">The opening control of each run, in time order.</param>
    /// <returns>Centre, sigma, limits and the runs they are from; who, when and why are left to the caller.</returns>
    /// <exception cref="ArgumentException">Fewer than 20 runs.</exception>
    public static ControlLimitRow From(IReadOnlyList<(string Run, ControlPoint Point)> openings)
    {
        ArgumentNullException.ThrowIfNull(openings);
        if (openings.Count < RuleDefaults.ControlRuns)
        {
            throw new ArgumentException(
                NumberText.Invariant($"Found {openings.Count} runs with this control, expected {RuleDefaults.ControlRuns} or more; state a target with its tolerance until then."), nameof(openings));
        }

        var chart = IndividualsChart.From([.. openings.Select(opening => opening.Point.Value)]).Values;
        return new ControlLimitRow
        {
            QuantityId = openings[0].Point.QuantityId,
            Material = openings[0].Point.Material,
            Kind = ControlLimitKinds.Frozen,
            Centre = Stored(chart.Centre),
            Sigma = Stored(chart.Sigma),
            Lower = Stored(chart.Lower),
            Upper = Stored(chart.Upper),
            Runs = openings.Count,
            FromRuns = JsonSerializer.Serialize(openings.Select(opening => opening.Run)),
        };
    }

    private static decimal Stored(decimal value) => decimal.Round(value, Science.Quantities.UnitConversion.StoredDecimals);
}
