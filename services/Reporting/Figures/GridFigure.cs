using System.Globalization;
using LabPipeline.Reporting.Season.Data;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>What the plan expects of every plot at every pull, and what became of it.</summary>
internal static class GridFigure
{
    private const string Id = "fig-grid";

    public static Figure? Draw(SeasonData data)
    {
        if (data.Grid.Count == 0)
        {
            return null;
        }

        var plots = data.Plots.OrderBy(plot => plot.Block, StringComparer.Ordinal).ThenBy(plot => plot.PlotCode, StringComparer.Ordinal).ToList();
        var column = plots.Select((plot, index) => (plot.PlotCode, index)).ToDictionary(pair => pair.PlotCode, pair => pair.index);
        var row = data.Pulls.Select((pull, index) => (pull.PullNo, index)).ToDictionary(pair => pair.PullNo, pair => data.Pulls.Count - 1 - pair.index);
        var cells = data.Grid.GroupBy(cell => (cell.PlotCode, cell.PullNo)).Select(group => (group.Key, State: GridStates.Of([.. group.Select(cell => cell.State)]))).ToList();
        var plot = FigureStyle.NewPlot("plots, by block", "pull");
        foreach (var (key, state) in cells)
        {
            Mark(plot, column[key.PlotCode], row[key.PullNo], state);
        }

        Rule(plot, plots, data.Pulls.Count);
        AxisTicks.Named(plot.Axes.Left, data.Pulls.Select(pull => ((double)row[pull.PullNo], pull.PullNo.ToString(CultureInfo.InvariantCulture))));
        AxisTicks.Named(plot.Axes.Bottom, plots.Select((one, index) => (one.Block, index)).GroupBy(pair => pair.Block).Select(block => (block.Average(pair => pair.index), $"block {block.Key}")));
        plot.Axes.SetLimits(-0.5, plots.Count - 0.5, -0.5, data.Pulls.Count - 0.5);
        plot.Grid.MajorLineWidth = 0;
        const string Title = "The season as measured";
        var counts = string.Join(", ", Enum.GetValues<GridState>().Select(state => (Name: GridStates.Name(state), Count: cells.Count(cell => cell.State == state))).Where(pair => pair.Count > 0)
            .Select(pair => string.Create(CultureInfo.InvariantCulture, $"{pair.Count} {pair.Name}")));
        return new Figure(Id, Title, "Each column is a plot, each row a pull, over all measurements the plan expects there. Filled: done as planned; filled with a dot: done, but after the window; pale with a bar: in part; grey with a stroke: set aside with a reason; white with a cross: missing; white: still expected.",
            [FigureStyle.Draw(plot, 720, 70 + (28 * data.Pulls.Count), Id, Title, $"{cells.Count} samples: {counts}.")]);
    }

    private static void Mark(Plot plot, int x, int y, GridState state)
    {
        var cell = plot.Add.Rectangle(x - 0.5, x + 0.5, y - 0.5, y + 0.5);
        cell.LineWidth = 0;
        cell.FillColor = state switch
        {
            GridState.Done or GridState.Late => FigureStyle.Hue(0),
            GridState.InPart => Color.FromHex("#F0C987"),
            GridState.Excluded => Color.FromHex("#BBBBBB"),
            _ => Colors.White,
        };
        foreach (var (from, to) in Strokes(state))
        {
            var stroke = plot.Add.Line(x - 0.35, y + from, x + 0.35, y + to);
            stroke.Color = Colors.Black;
            stroke.LineWidth = 1;
        }

        if (state == GridState.Late)
        {
            plot.Add.Marker(x, y, MarkerShape.FilledCircle, 4, Colors.White);
        }
    }

    private static (double From, double To)[] Strokes(GridState state) => state switch
    {
        GridState.Missing => [(-0.3, 0.3), (0.3, -0.3)],
        GridState.InPart => [(0, 0)],
        GridState.Excluded => [(-0.3, 0.3)],
        _ => [],
    };

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
