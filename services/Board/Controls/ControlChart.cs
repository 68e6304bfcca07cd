using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.ControlCharts;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Board.Controls;

/// <summary>A control chart as its page shows it, judged by the rules that alerts come from.</summary>
internal static class ControlChart
{
    /// <summary>A chart's name in addresses and forms.</summary>
    public static string KeyOf(ControlChartName chart) => $"{chart.Instrument}|{chart.Material}|{chart.Quantity.Name}";

    /// <param name="instrument">The instrument.</param>
    /// <param name="points">Every control of one material and quantity on it.</param>
    /// <param name="limits">Limits with their history: each control is held against those in force when it was measured.</param>
    /// <returns>One entry a run, in time order.</returns>
    public static IReadOnlyList<ControlRun> Of(string instrument, IReadOnlyList<(string Run, ControlPoint Point)> points, ControlLimitBook limits)
    {
        var openings = ControlReview.Openings(points)
            .Select(opening => (opening.Run, opening.Point, Limits: limits.Find(instrument, opening.Point.Material, opening.Point.QuantityId, opening.Point.MeasuredAt)))
            .ToList();
        var trends = TrendsOf(openings);
        var byRun = points.ToLookup(entry => entry.Run, entry => entry.Point, StringComparer.Ordinal);
        return
        [
            .. openings.Select((opening, index) =>
            {
                var broken = ControlReview.Judge(instrument, byRun[opening.Run], limits).Where(verdict => !verdict.Passed).Select(verdict => verdict.Failure!).ToList();
                return new ControlRun(
                    opening.Run, opening.Point.MeasuredAt, opening.Point.Value, opening.Limits, byRun[opening.Run].Count(), broken.Count, [.. broken.Concat(trends[index]).Distinct()]);
            }),
        ];
    }

    /// <summary>Drifts are looked for among runs under the same frozen limits, as alerts do.</summary>
    private static ILookup<int, string> TrendsOf(IReadOnlyList<(string Run, ControlPoint Point, ControlLimitRow? Limits)> openings) => openings
        .Select((opening, index) => (opening.Point, opening.Limits, Index: index))
        .Where(entry => entry.Limits is { Kind: ControlLimitKinds.Frozen, Sigma: not null })
        .GroupBy(entry => entry.Limits!.Version)
        .Select(series => series.ToList())
        .SelectMany(series => RunRules
            .Evaluate([.. series.Select(entry => (entry.Point.Value - entry.Limits!.Centre) / entry.Limits.Sigma!.Value)], RuleDefaults.TrendRules)
            .Select(signal => (series[signal.Index].Index, signal.Rule.Name)))
        .ToLookup(signal => signal.Index, signal => signal.Name);
}
