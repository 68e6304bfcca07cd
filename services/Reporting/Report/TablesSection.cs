using LabPipeline.Reporting.Season;

namespace LabPipeline.Reporting.Report;

/// <summary>The tables.</summary>
internal static class TablesSection
{
    public static void Write(HtmlPage page, ReportContent content)
    {
        page.Heading(2, "tables", "3 Tables")
            .Note($"A value is an adjusted mean in the unit of the heading; the letters beside it are Tukey's, best mean first: means of one pull with a common letter are not shown to differ. SED, LSD and HSD are on the scale of analysis. {DoubtMark.Text}: the mean rests on at least one result in doubt.");
        KeepingTables.Write(page, content);
        foreach (var analysis in content.Analysis.Responses)
        {
            var id = $"table-{analysis.Response.Quantity.Name}";
            page.Heading(3, id, Title(analysis.Response));
            MeansTablesHtml.Write(page, content, analysis);
            SeasonTablesHtml.Write(page, analysis);
            ComparisonTables.Write(page, content, analysis);
        }

        RelationTable(page, content.Analysis.SugarColour);
        Absent(page, content);
    }

    private static string Title(Response response) => response.Unit.Length == 0 ? response.Title : $"{response.Title}, {response.Unit}";

    private static void RelationTable(HtmlPage page, SugarColour? relation)
    {
        page.Heading(3, "table-sugar-colour", "Chip colour and glucose");
        if (relation is null)
        {
            page.Raw("<div class=\"cannot\">").Paragraph("Glucose and chip colour were not both measured: their relation cannot be estimated.").Raw("</div>");
            return;
        }

        var table = new HtmlTable("Hunter L against the natural logarithm of glucose, at the level of plot means", "plots", "n", "Pearson r", "95 % interval", "p", "Spearman", "p", "L for ten times the glucose");
        foreach (var row in relation.Pulls.Append(relation.Season))
        {
            table.Row(row.Label, NumberText.Whole(row.N),
                row.WhyNone is { } why ? $"not estimable: {why}" : NumberText.Fixed(row.Pearson!.Coefficient, 2),
                row.Pearson?.Interval is { } interval ? $"{NumberText.Fixed(interval.Low, 2)} to {NumberText.Fixed(interval.High, 2)}" : NumberText.None,
                NumberText.P(row.Pearson?.P), NumberText.Fixed(row.Spearman?.Coefficient, 2), NumberText.P(row.Spearman?.P),
                NumberText.Fixed(row.Line?.Slope * Math.Log(10), 1));
        }

        page.Table(table).Note("Pulls of one plot are not independent, so the last line uses the mean of each plot. Plots below the quantitation limit of glucose are left out.");
    }

    private static void Absent(HtmlPage page, ReportContent content)
    {
        var absent = ResponseCatalogue.All.Where(response => content.Analysis.Find(response) is null).Select(response => response.InText).ToList();
        if (absent.Count > 0)
        {
            page.Note($"Not measured in this trial: {string.Join(", ", absent)}. Sprouting is not recorded in the warehouse.");
        }
    }
}
