using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.ControlCharts;
using LabPipeline.Science.Quantities;
using LabPipeline.Science.Statistics;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>Control charts of the season, one panel for each instrument, material and quantity.</summary>
internal static class ControlFigures
{
    private const string Id = "fig-control";

    /// <summary>Runs that set the limits; fewer give provisional ones.</summary>
    public const int RunsForLimits = 20;

    public static Figure? Draw(IReadOnlyList<ControlFact> controls)
    {
        var panels = Charts(controls).Select((chart, index) => Panel(chart, index)).ToList();
        return panels.Count == 0 ? null : new Figure(Id, "Control charts of the season",
            $"Single control results in order of time. Full line: mean; dashed: mean and 3 sigma each way from the moving ranges of the first {RunsForLimits} results (ISO 7870-2), then frozen. Open squares lie beyond.",
            panels);
    }

    /// <summary>Series that vary at all, and what lies beyond their limits.</summary>
    public static IEnumerable<ControlSeries> Charts(IReadOnlyList<ControlFact> controls) =>
        controls.GroupBy(fact => (fact.Instrument, fact.Material, fact.QuantityId)).Where(group => group.Count() > 2).Select(group =>
        {
            var values = group.OrderBy(fact => fact.MeasuredAt ?? DateTimeOffset.MinValue).ThenBy(fact => fact.FileId).ThenBy(fact => fact.Line).ToList();
            try
            {
                var limits = IndividualsChart.From([.. values.Take(RunsForLimits).Select(fact => fact.Value)]).Values;
                return new ControlSeries(group.Key.Instrument, group.Key.Material, QuantityCatalogue.Get(group.Key.QuantityId), values, limits);
            }
            catch (NotEstimableException)
            {
                // A control that never varies (a constant dilution, a bath temperature) has no chart.
                return null;
            }
        }).OfType<ControlSeries>();

    private static string Panel(ControlSeries chart, int index)
    {
        var unit = UnitNames.Of(chart.Quantity.Unit);
        var plot = FigureStyle.NewPlot("result", unit.Length == 0 ? chart.Quantity.Name : $"{chart.Quantity.Name}, {unit}");
        double[] y = [.. chart.Results.Select(fact => (double)fact.Value)];
        var line = plot.Add.Scatter(Enumerable.Range(1, y.Length).Select(at => (double)at).ToArray(), y, FigureStyle.Hue(0));
        line.MarkerSize = 4;
        line.LineWidth = 1;
        foreach (var (value, at) in y.Select((value, at) => (value, at)).Where(pair => chart.Limits.IsOut(chart.Results[pair.at].Value)))
        {
            plot.Add.Marker(at + 1, value, MarkerShape.OpenSquare, 11, FigureStyle.Hue(1));
        }

        FigureStyle.Rule(plot, (double)chart.Limits.Centre, false);
        FigureStyle.Rule(plot, (double)chart.Limits.Lower, true);
        FigureStyle.Rule(plot, (double)chart.Limits.Upper, true);
        var (low, high) = (Math.Min(y.Min(), (double)chart.Limits.Lower), Math.Max(y.Max(), (double)chart.Limits.Upper));
        plot.Axes.SetLimits(0, y.Length + 1, low - (0.05 * (high - low)), high + (0.05 * (high - low)));
        plot.Title($"{chart.Instrument}, {chart.Material}", 12);
        return FigureStyle.Draw(plot, 420, 240, $"{Id}-{index + 1}", $"Control chart of {chart.Quantity.Name}, {chart.Material}, {chart.Instrument}",
            string.Create(CultureInfo.InvariantCulture, $"{y.Length} results, {chart.Beyond} beyond the limits {chart.Limits.Lower:G6} to {chart.Limits.Upper:G6}."));
    }
}
