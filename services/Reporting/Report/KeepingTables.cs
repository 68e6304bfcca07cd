using LabPipeline.Reporting.Season.Keeping;

namespace LabPipeline.Reporting.Report;

/// <summary>How long each clone and treatment kept.</summary>
internal static class KeepingTables
{
    public static void Write(HtmlPage page, ReportContent content)
    {
        page.Heading(3, "table-keeping", "Keeping time, days after harvest");
        foreach (var table in content.Analysis.Keeping.Where(table => table.WhyNone is not null))
        {
            page.Raw("<div class=\"cannot\">").Paragraph($"{KeepingLimits.Describe(table.Limit)}: cannot be estimated, {table.WhyNone}.").Raw("</div>");
        }

        var tables = content.Analysis.Keeping.Where(table => table.WhyNone is null).ToList();
        if (tables.Count == 0)
        {
            return;
        }

        var labels = tables.SelectMany(table => table.Clones).Select(time => (time.Label, IsClone: true))
            .Concat(tables.SelectMany(table => table.Cells).Select(time => (time.Label, IsClone: false))).Distinct();
        var printed = new HtmlTable("Day on which the mean passes the limit, and 95 % interval", ["", .. tables.Select(table => KeepingLimits.Describe(table.Limit))]);
        foreach (var (label, isClone) in labels)
        {
            printed.RowOfHtml([isClone ? $"<strong>{HtmlPage.Encode(label)}</strong>" : HtmlPage.Encode(label.Replace(":", ", ", StringComparison.Ordinal)),
                .. tables.Select(table => Cell((isClone ? table.Clones : table.Cells).FirstOrDefault(time => time.Label == label)))]);
        }

        var last = content.Data.DayOf(content.Data.Pulls[^1].PullNo);
        page.Table(printed).Note($"In bold: clones, averaged over the other treatments. > {last}: within the limit at the last pull. ≤: beyond it at the first pull already. *: within the limit again at a later pull; the first passing is given. Sources of the limits stand under Methods.");
    }

    private static string Cell(KeepingTime? time) => time is null ? NumberText.None : HtmlPage.Encode($"{KeepingText.Day(time)} ({KeepingText.Interval(time)})");
}
