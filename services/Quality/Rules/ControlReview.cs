using System.Globalization;
using LabPipeline.Science.ControlCharts;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Quality.Rules;

/// <summary>Judges the controls of a run, and finds the readings that a failed one leaves without a voucher.</summary>
/// <remarks>
/// Run rules that put readings in doubt look at one run only, so that the order in which files of other runs arrive decides nothing.
/// Quantities that only describe how something was measured, such as a dilution, have no chart.
/// </remarks>
public static class ControlReview
{
    /// <summary>Name of what breaks a stated tolerance; frozen limits name the run rule instead.</summary>
    public const string OutsideTolerance = "outside_tolerance";

    private static readonly Quantity[] NotCharted =
    [
        QuantityCatalogue.ExtractFreshMass, QuantityCatalogue.ExtractVolume, QuantityCatalogue.SolventVolume, QuantityCatalogue.DilutionFactor,
        QuantityCatalogue.WaterTemperature,
    ];

    public static bool IsCharted(Quantity quantity) => !NotCharted.Contains(quantity);

    /// <summary>Verdicts in the order of measurement; controls without limits in force have none.</summary>
    public static IReadOnlyList<ControlVerdict> Judge(string instrument, IEnumerable<ControlPoint> points, ControlLimitBook limits) =>
    [
        .. InOrder(points).Where(point => IsCharted(point.Quantity))
            .Select(point => (Point: point, Limits: limits.Find(instrument, point.Material, point.QuantityId, point.MeasuredAt)))
            .Where(pair => pair.Limits is not null)
            .GroupBy(pair => (pair.Point.Material, pair.Point.QuantityId, pair.Limits!.Version))
            .SelectMany(series => Judge([.. series.Select(pair => pair.Point)], series.First().Limits!))
            .OrderBy(verdict => verdict.Point.MeasuredAt ?? DateTimeOffset.MaxValue)
            .ThenBy(verdict => verdict.Point.Line)
            .ThenBy(verdict => verdict.Point.Identity, StringComparer.Ordinal),
    ];

    /// <summary>The readings between a failed control and the next good one, before it and after it, each with the control that failed.</summary>
    /// <param name="verdicts">Verdicts of the run.</param>
    /// <param name="readings">Readings of the run.</param>
    /// <param name="released">Identities of failed controls a person has answered for.</param>
    public static IReadOnlyList<(ControlledReading Reading, ControlVerdict Cause)> InDoubt(
        IReadOnlyList<ControlVerdict> verdicts, IEnumerable<ControlledReading> readings, IReadOnlySet<string> released)
    {
        var byQuantity = readings.ToLookup(reading => reading.QuantityId);
        return
        [
            .. verdicts.Where(verdict => !verdict.Passed && !released.Contains(verdict.Point.Identity)).Select(verdict => verdict.Point.QuantityId).Distinct().Order()
                .SelectMany(quantityId => Bracketed([.. verdicts.Where(verdict => verdict.Point.QuantityId == quantityId)], byQuantity[quantityId], released)),
        ];
    }

    /// <summary>The first control of each run, in time order: one point a run on the chart.</summary>
    public static IReadOnlyList<(string Run, ControlPoint Point)> Openings(IEnumerable<(string Run, ControlPoint Point)> points) =>
    [
        .. points.GroupBy(entry => entry.Run, StringComparer.Ordinal)
            .Select(run => (Run: run.Key, Point: InOrder(run.Select(entry => entry.Point)).First()))
            .OrderBy(entry => entry.Point.MeasuredAt ?? DateTimeOffset.MaxValue)
            .ThenBy(entry => entry.Run, StringComparer.Ordinal),
    ];

    private static IEnumerable<ControlPoint> InOrder(IEnumerable<ControlPoint> points) => points
        .OrderBy(point => point.MeasuredAt ?? DateTimeOffset.MaxValue)
        .ThenBy(point => point.Line)
        .ThenBy(point => point.Identity, StringComparer.Ordinal);

    private static IEnumerable<ControlVerdict> Judge(IReadOnlyList<ControlPoint> series, ControlLimitRow limits)
    {
        if (limits is not { Kind: ControlLimitKinds.Frozen, Sigma: { } sigma })
        {
            return series.Select(point => new ControlVerdict(point, limits, point.Value < limits.Lower || point.Value > limits.Upper ? OutsideTolerance : null));
        }

        var signals = RunRules.Evaluate([.. series.Select(point => (point.Value - limits.Centre) / sigma)], RuleDefaults.ControlRules)
            .ToLookup(signal => signal.Index, signal => signal.Rule.Name);
        return series.Select((point, index) => new ControlVerdict(point, limits, signals[index].FirstOrDefault()));
    }

    private static IEnumerable<(ControlledReading Reading, ControlVerdict Cause)> Bracketed(
        IReadOnlyList<ControlVerdict> verdicts, IEnumerable<ControlledReading> readings, IReadOnlySet<string> released)
    {
        var controls = verdicts.ToDictionary(verdict => "control " + verdict.Point.Identity);
        var own = readings.ToDictionary(reading => reading.ReadingId.ToString(CultureInfo.InvariantCulture));
        var run = controls.Select(pair => (pair.Value.Point.MeasuredAt, pair.Value.Point.Line, Entry: RunEntry.Control(pair.Key, pair.Value.Passed || released.Contains(pair.Value.Point.Identity))))
            .Concat(own.Select(pair => (pair.Value.MeasuredAt, pair.Value.Line, Entry: RunEntry.Reading(pair.Key))))
            .OrderBy(entry => entry.MeasuredAt ?? DateTimeOffset.MaxValue)
            .ThenBy(entry => entry.Line)
            .Select(entry => entry.Entry)
            .ToList();
        return Bracketing.Judge(run).Where(reading => reading.State == BracketState.InDoubt)
            .Select(reading => (own[reading.Id], controls[reading.Before.Concat(reading.After).First(control => control.ControlPassed == false).Id]));
    }
}
