using LabPipeline.Reporting.Season;
using ScottPlot;

namespace LabPipeline.Reporting.Figures;

/// <summary>Studentised residuals against fitted values, all pulls together.</summary>
internal static class ResidualFigure
{
    private const string Id = "fig-residuals";

    public static Figure? Draw(IEnumerable<ResponseAnalysis> analyses)
    {
        var panels = analyses.Where(one => one.Response.Major).Select((one, index) => Panel(one, index)).OfType<string>().ToList();
        return panels.Count == 0 ? null : new Figure(Id, "Residuals of the analyses pull by pull",
            "Studentised residual of each plot against its fitted value on the scale of analysis. Looked for: a funnel (spread grows with the mean), a bow, single plots far out; dashed lines at 3.", panels);
    }

    private static string? Panel(ResponseAnalysis analysis, int index)
    {
        var points = analysis.Pulls.SelectMany(pull => pull.Diagnostics).Where(one => one.StudentizedResidual is not null).ToList();
        if (points.Count == 0)
        {
            return null;
        }

        var plot = FigureStyle.NewPlot(analysis.Response.Kind switch { ResponseScaleKind.Log => "fitted, logarithm", ResponseScaleKind.Share => "fitted, logit", _ => "fitted, as measured" }, "studentised residual");
        var marks = plot.Add.Markers(points.Select(one => one.Fitted).ToArray(), points.Select(one => one.StudentizedResidual!.Value).ToArray());
        marks.MarkerShape = MarkerShape.OpenCircle;
        marks.MarkerSize = 5;
        marks.Color = FigureStyle.Hue(0);
        FigureStyle.Rule(plot, 0, false);
        FigureStyle.Rule(plot, 3, true);
        FigureStyle.Rule(plot, -3, true);
        plot.Title(analysis.Response.Title, 13);
        plot.Axes.AutoScale();
        return FigureStyle.Draw(plot, 420, 260, $"{Id}-{index + 1}", $"Residuals of {analysis.Response.Title}",
            $"{points.Count} residuals, {points.Count(one => Math.Abs(one.StudentizedResidual!.Value) > 3)} of them beyond 3.");
    }
}
