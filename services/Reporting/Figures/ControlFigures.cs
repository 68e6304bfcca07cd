using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Warehouse.Controls;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>Control charts of the season, one panel for each instrument, material and quantity.</summary>
internal static class ControlFigures
{
    private const string Id = "fig-control";

    public static Figure? Draw(SeasonData data)
    {
        var panels = ControlSeries.Of(data).Select(Panel).ToList();
        return panels.Count == 0 ? null : new Figure(Id, "Control charts of the season",
            "Single control results in order of time. Full line: centre; dashed: lower and upper limit, as the laboratory has decided them and had them in force when the control was measured; where a panel has no lines it has decided on none. Open squares lie beyond. Limits, their history and their reasons stand under Controls.",
            panels);
    }

    private static string Panel(ControlSeries chart, int index)
    {
        var unit = UnitNames.Of(chart.Quantity.Unit);
        var plot = FigureStyle.NewPlot("result, in order of time", unit.Length == 0 ? "value" : unit);
        double[] y = [.. chart.Results.Select(fact => (double)fact.Value)];
        var line = plot.Add.Scatter(Enumerable.Range(1, y.Length).Select(at => (double)at).ToArray(), y, FigureStyle.Hue(0));
        line.MarkerSize = 4;
        line.LineWidth = 1;
        foreach (var (fact, at) in chart.Results.Select((fact, at) => (fact, at)).Where(pair => chart.IsBeyond(pair.fact)))
        {
            plot.Add.Marker(at + 1, (double)fact.Value, MarkerShape.OpenSquare, 11, FigureStyle.Hue(1));
        }

        var drawn = Limits(plot, chart);
        double[] edges = [.. y, .. drawn.SelectMany(row => new[] { (double)row.Lower, (double)row.Upper })];
        var (low, high) = (edges.Min(), edges.Max());
        var room = Math.Max(0.05 * (high - low), 1e-9);
        plot.Axes.SetLimits(0, y.Length + 1, low - room, high + room);
        plot.Title($"{UnitNames.Spoken(chart.Quantity)}: {chart.Material}, {chart.Instrument}", 11);
        return FigureStyle.Draw(plot, 420, 250, $"{Id}-{index + 1}", $"Control chart of {UnitNames.Spoken(chart.Quantity)}, {chart.Material}, {chart.Instrument}", Describe(chart, drawn));
    }

    /// <summary>Each version over the results it was in force for.</summary>
    private static List<ControlLimitRow> Limits(Plot plot, ControlSeries chart)
    {
        var drawn = new List<ControlLimitRow>();
        foreach (var span in chart.Results.Select((fact, at) => (Limits: chart.LimitsOf(fact), at)).Where(pair => pair.Limits is not null).GroupBy(pair => pair.Limits!))
        {
            drawn.Add(span.Key);
            var (from, to) = (span.Min(pair => pair.at) + 0.5, span.Max(pair => pair.at) + 1.5);
            foreach (var (value, isDashed) in new[] { (span.Key.Centre, false), (span.Key.Lower, true), (span.Key.Upper, true) })
            {
                var rule = plot.Add.Line(from, (double)value, to, (double)value);
                rule.Color = Colors.Black;
                rule.LineWidth = LineDash.Width(1.5f, isDashed ? LineDash.Rule : 0);
            }
        }

        return drawn;
    }

    private static string Describe(ControlSeries chart, List<ControlLimitRow> drawn) => drawn.Count == 0
        ? string.Create(CultureInfo.InvariantCulture, $"{chart.Results.Count} results; the laboratory has decided on no limits.")
        : string.Create(CultureInfo.InvariantCulture, $"{chart.Results.Count} results, {chart.Beyond} beyond the limits {drawn[^1].Lower:0.######} to {drawn[^1].Upper:0.######}.");
}
