using LabPipeline.Reporting.Printing;

namespace LabPipeline.Reporting.Planning;

/// <summary>A plot map as picture and as print.</summary>
public static class PlotMapFiles
{
    /// <exception cref="PrintException">There is no font, or a level is too long for its cell.</exception>
    public static string Svg(PlotMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var plan = map.Plan;
        return SvgPage.Of(
            new PlotMapPages(map, new TextWidths()).Whole(),
            $"{plan.Code}: plot map",
            $"{plan.Plots.Count} plots in {plan.Design.Blocks.Count} blocks, in rows of {map.Columns}; the same as a table stands in the comma-separated file.");
    }

    /// <inheritdoc cref="Svg"/>
    public static byte[] Pdf(PlotMap map, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(map);
        return PdfPages.Of(new PlotMapPages(map, new TextWidths()).Paged(), $"{map.Plan.Code}: plot map", now);
    }
}
