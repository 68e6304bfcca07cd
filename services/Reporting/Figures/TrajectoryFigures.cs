using System.Globalization;
using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Keeping;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>Means against days after harvest, with standard errors and limits.</summary>
internal static class TrajectoryFigures
{
    private const int Width = 720;
    private const int Height = 440;
    private const int PanelWidth = 420;
    private const int PanelHeight = 350;

    /// <summary>All clones in one frame.</summary>
    public static Figure? Clones(ResponseAnalysis analysis, IReadOnlyList<KeepingLimit> limits)
    {
        if (analysis.Season is not { Clones.Count: > 0 } season)
        {
            return null;
        }

        var title = $"{analysis.Response.Title} of each clone in storage";
        var plot = Frame(analysis, season.Clones, season.Clones, limits, true);
        FigureStyle.Legend(plot);
        var id = $"fig-{analysis.Response.Quantity.Name}";
        return new Figure(id, title, Caption(analysis, "clones, averaged over the other treatments"), [FigureStyle.Draw(plot, Width, Height, id, title, Describe(analysis, season.Clones))]);
    }

    /// <summary>One panel a clone, its treatments in it, all on the same axes.</summary>
    public static Figure? Treatments(ResponseAnalysis analysis, TrialModel model, IReadOnlyList<KeepingLimit> limits)
    {
        if (analysis.Season is not { Cells.Count: > 0 } season || model.CloneFactor is not { } clone || model.Factors.Count < 2)
        {
            return null;
        }

        var at = model.Factors.ToList().FindIndex(factor => factor.Name == clone);
        var id = $"fig-{analysis.Response.Quantity.Name}-treatments";
        var title = $"{analysis.Response.Title} by clone and treatment in storage";
        var panels = season.Cells.GroupBy(cell => cell.Label.Split(':')[at]).Select((group, index) =>
        {
            var lines = group.Select(cell => cell with { Label = string.Join(", ", cell.Label.Split(':').Where((_, place) => place != at)) }).ToList();
            var plot = Frame(analysis, lines, season.Cells, limits, false);
            plot.Title(group.Key, 14);
            plot.Axes.Left.Label.FontSize = 11;
            FigureStyle.Legend(plot);
            return FigureStyle.Draw(plot, PanelWidth, PanelHeight, $"{id}-{index + 1}", $"{title}: {group.Key}", Describe(analysis, lines));
        });
        return new Figure(id, title, Caption(analysis, $"treatments of each clone ({string.Join(", ", model.Factors.Where(factor => factor.Name != clone).Select(factor => factor.Name))})"), [.. panels]);
    }

    private static Plot Frame(ResponseAnalysis analysis, IReadOnlyList<Trajectory> lines, IReadOnlyList<Trajectory> scale, IReadOnlyList<KeepingLimit> limits, bool named)
    {
        var response = analysis.Response;
        var plot = FigureStyle.NewPlot("days after harvest", response.Unit.Length == 0 ? response.Title : $"{response.Title}, {response.Unit}");
        double Place(double onScale) => response.Kind == ResponseScaleKind.Log ? onScale / Math.Log(10) : analysis.Back(onScale);
        foreach (var (line, index) in lines.Select((line, index) => (line, index)))
        {
            Draw(plot, line, index, lines.Count, Place);
        }

        var edges = scale.SelectMany(line => line.Points).SelectMany(point => new[] { Place(point.Mean - point.StandardError), Place(point.Mean + point.StandardError) })
            .Concat(limits.Select(limit => Limit(response, limit))).ToList();
        foreach (var limit in limits)
        {
            var rule = FigureStyle.Rule(plot, Limit(response, limit), true);
            rule.LegendText = named ? string.Create(CultureInfo.InvariantCulture, $"limit {limit.Value:0.###}") : "";
        }

        var (low, high) = (edges.Min(), edges.Max());
        var room = Math.Max(0.06 * (high - low), 1e-6);
        var days = scale.SelectMany(line => line.Points).Select(point => point.Day).ToList();
        plot.Axes.SetLimits(days.Min() - 8, days.Max() + 8, low - room, high + room);
        if (response.Kind == ResponseScaleKind.Log)
        {
            AxisTicks.Logarithmic(plot.Axes.Left, Math.Pow(10, low), Math.Pow(10, high));
        }

        return plot;
    }

    private static void Draw(Plot plot, Trajectory line, int index, int count, Func<double, double> place)
    {
        // Lines of one pull are set a little apart, so that their bars do not hide each other.
        var aside = (index - ((count - 1) / 2.0)) * 1.1;
        double[] x = [.. line.Points.Select(point => point.Day + aside)];
        double[] y = [.. line.Points.Select(point => place(point.Mean))];
        for (var at = 0; at < x.Length; at++)
        {
            var point = line.Points[at];
            var bar = plot.Add.Line(x[at], place(point.Mean - point.StandardError), x[at], place(point.Mean + point.StandardError));
            bar.Color = FigureStyle.Hue(index);
            bar.LineWidth = 1.5f;
        }

        var scatter = plot.Add.Scatter(x, y, FigureStyle.Hue(index));
        scatter.MarkerShape = FigureStyle.Mark(index);
        scatter.MarkerSize = 8;
        scatter.LineWidth = LineDash.Width(2, index);
        scatter.LegendText = line.Label;
    }

    private static double Limit(Response response, KeepingLimit limit) =>
        response.Kind == ResponseScaleKind.Log ? Math.Log10((double)limit.Value) : (double)limit.Value;

    private static string Caption(ResponseAnalysis analysis, string what) =>
        $"Adjusted means of {what} from the whole-season model, analysed on the scale: {analysis.ScaleStatement}; bars are one standard error of the mean each way"
        + (analysis.Response.Kind == ResponseScaleKind.Log ? "; logarithmic axis, geometric means." : ".") + " Dashed horizontal lines are limits. Points of one pull are set slightly apart.";

    private static string Describe(ResponseAnalysis analysis, IReadOnlyList<Trajectory> lines) => string.Join("; ", lines.Where(line => line.Points.Count > 0).Select(line =>
    {
        var format = "F" + analysis.Response.Decimals.ToString(CultureInfo.InvariantCulture);
        string Text(double value) => analysis.Back(value).ToString(format, CultureInfo.InvariantCulture);
        return $"{line.Label} from {Text(line.Points[0].Mean)} on day {line.Points[0].Day} to {Text(line.Points[^1].Mean)} on day {line.Points[^1].Day}";
    })) + ".";
}
