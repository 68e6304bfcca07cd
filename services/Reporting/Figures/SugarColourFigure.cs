using LabPipeline.Reporting.Season;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>Glucose against Hunter L, one mark a plot and pull.</summary>
internal static class SugarColourFigure
{
    private const string Id = "fig-sugar-colour";

    /// <param name="relation">The relation.</param>
    /// <param name="clones">Clones in plan order: a clone looks the same in every figure.</param>
    public static Figure? Draw(SugarColour? relation, IReadOnlyList<string> clones)
    {
        if (relation is null || relation.Points.Count < 3)
        {
            return null;
        }

        var plot = FigureStyle.NewPlot("glucose, mg/g fresh weight (logarithmic)", "Hunter L of the chips");
        foreach (var (clone, index) in clones.Select((name, index) => (relation.Points.Where(point => point.Clone == name).ToList(), index)).Where(pair => pair.Item1.Count > 0))
        {
            var marks = plot.Add.Markers(clone.Select(point => Math.Log10(point.Glucose)).ToArray(), clone.Select(point => point.L).ToArray());
            marks.MarkerShape = FigureStyle.Mark(index);
            marks.MarkerSize = 6;
            marks.Color = FigureStyle.Hue(index);
            marks.LegendText = clone[0].Clone;
        }

        var (low, high) = (relation.Points.Min(point => point.Glucose), relation.Points.Max(point => point.Glucose));
        if (relation.Season.Line is { } line)
        {
            var rule = plot.Add.Line(Math.Log10(low), line.Intercept + (line.Slope * Math.Log(low)), Math.Log10(high), line.Intercept + (line.Slope * Math.Log(high)));
            rule.LineColor = Colors.Black;
            rule.LineWidth = 1.5f;
            rule.LegendText = "line of season means";
        }

        AxisTicks.Logarithmic(plot.Axes.Bottom, low, high);
        plot.Axes.SetLimits(Math.Log10(low) - 0.05, Math.Log10(high) + 0.05, relation.Points.Min(point => point.L) - 1, relation.Points.Max(point => point.L) + 1);
        FigureStyle.Legend(plot);
        const string Title = "Chip colour against glucose, plot means";
        return new Figure(Id, Title, "One mark a plot and pull; the line is fitted to the means of plots over the season, the level at which plots are independent.",
            [FigureStyle.Draw(plot, 720, 460, Id, Title, $"{relation.Points.Count} plot means; Hunter L falls as glucose rises where the line slopes down.")]);
    }
}
