using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>Which plots were measured at which pull.</summary>
internal static class GridFigure
{
    private const string Id = "fig-grid";

    public static Figure Draw(SeasonData data)
    {
        var plots = data.Plots.OrderBy(plot => plot.Block, StringComparer.Ordinal).ThenBy(plot => plot.PlotCode, StringComparer.Ordinal).ToList();
        var column = plots.Select((plot, index) => (plot.PlotCode, index)).ToDictionary(pair => pair.PlotCode, pair => pair.index);
        var row = data.Pulls.Select((pull, index) => (pull.PullNo, index)).ToDictionary(pair => pair.PullNo, pair => data.Pulls.Count - 1 - pair.index);
        var expected = data.Expected.GroupBy(fact => fact.PullNo).ToDictionary(group => group.Key, group => group.Sum(fact => fact.Readings));
        var plot = FigureStyle.NewPlot("plots, by block", "pull");
        var full = plot.Add.Rectangle(-0.5, plots.Count - 0.5, -0.5, data.Pulls.Count - 0.5);
        full.FillColor = FigureStyle.Hue(0);
        full.LineWidth = 0;
        foreach (var sample in data.Samples.Where(sample => sample.Readings < expected.GetValueOrDefault(sample.PullNo, 1)))
        {
            Mark(plot, column[sample.PlotCode], row[sample.PullNo], sample.Readings == 0);
        }

        Rule(plot, plots, data.Pulls.Count);
        AxisTicks.Named(plot.Axes.Left, data.Pulls.Select(pull => ((double)row[pull.PullNo], pull.PullNo.ToString(CultureInfo.InvariantCulture))));
        AxisTicks.Named(plot.Axes.Bottom, plots.Select((one, index) => (one.Block, index)).GroupBy(pair => pair.Block).Select(block => (block.Average(pair => pair.index), $"block {block.Key}")));
        plot.Axes.SetLimits(-0.5, plots.Count - 0.5, -0.5, data.Pulls.Count - 0.5);
        plot.Grid.MajorLineWidth = 0;
        var (missing, partial) = (data.Samples.Count(sample => sample.Readings == 0), data.Samples.Count(sample => sample.Readings > 0 && sample.Readings < expected.GetValueOrDefault(sample.PullNo, 1)));
        const string Title = "The season as measured";
        return new Figure(Id, Title, "Each column is a plot, each row a pull. Filled: measured as planned; pale with a bar: measured in part; white with a cross: not measured.",
            [FigureStyle.Draw(plot, 720, 70 + (28 * data.Pulls.Count), Id, Title,
                string.Create(CultureInfo.InvariantCulture, $"{data.Samples.Count} samples planned; {missing} not measured, {partial} measured in part."))]);
    }

    private static void Mark(Plot plot, int x, int y, bool missing)
    {
        var cell = plot.Add.Rectangle(x - 0.5, x + 0.5, y - 0.5, y + 0.5);
        cell.FillColor = missing ? Colors.White : Color.FromHex("#F0C987");
        cell.LineWidth = 0;
        foreach (var (from, to) in missing ? new[] { (-0.3, 0.3), (0.3, -0.3) } : [(0.0, 0.0)])
        {
            var stroke = plot.Add.Line(x - 0.35, y + from, x + 0.35, y + to);
            stroke.Color = Colors.Black;
            stroke.LineWidth = 1;
        }
    }

    private static void Rule(Plot plot, List<PlotFact> plots, int pulls)
    {
        for (var y = 0; y < pulls - 1; y++)
        {
            plot.Add.Line(-0.5, y + 0.5, plots.Count - 0.5, y + 0.5).Color = Colors.White;
        }

        for (var x = 0; x < plots.Count - 1; x++)
        {
            var border = plots[x].Block != plots[x + 1].Block;
            var line = plot.Add.Line(x + 0.5, -0.5, x + 0.5, pulls - 0.5);
            line.Color = border ? Colors.Black : Colors.White;
            line.LineWidth = border ? 2 : 0.5f;
        }
    }
}
