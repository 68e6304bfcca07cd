using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Reporting.Report;

/// <summary>What was planned, what came, how it was checked, and what was left out.</summary>
internal static class QualitySection
{
    public static void Write(HtmlPage page, ReportContent content)
    {
        page.Heading(2, "quality", "2 Data quality");
        Completeness(page, content.Data);
        Duplicates(page, content.Data);
        Limits(page, content);
        ControlSection.Write(page, content.Data);
        Exclusions(page, content.Data);
        Alerts(page, content.Data);
    }

    private static void Completeness(HtmlPage page, SeasonData data)
    {
        var analysed = data.Results.Select(result => result.Barcode).ToHashSet();
        var table = new HtmlTable("Samples", "pull", "planned", "received", "analysed", "complete", "not received");
        foreach (var pull in data.Pulls)
        {
            var samples = data.Samples.Where(sample => sample.PullNo == pull.PullNo).ToList();
            var expected = data.Expected.Where(fact => fact.PullNo == pull.PullNo).Sum(fact => fact.Readings);
            table.Row(
                NumberText.Whole(pull.PullNo),
                NumberText.Whole(samples.Count),
                NumberText.Whole(samples.Count(sample => sample.Readings > 0)),
                NumberText.Whole(samples.Count(sample => analysed.Contains(sample.Barcode))),
                NumberText.Whole(samples.Count(sample => sample.Readings > 0 && sample.Readings >= expected)),
                Missing(data, samples));
        }

        page.Heading(3, "quality-samples", "Samples planned, received and analysed").Table(table)
            .Note("Received: at least one reading in effect. Complete: at least as many readings as the plan expects.");
    }

    private static string Missing(SeasonData data, List<SampleFact> samples)
    {
        var blockOf = data.Plots.ToDictionary(plot => plot.PlotCode, plot => plot.Block);
        var gone = samples.Where(sample => sample.Readings == 0).ToList();
        return gone.Count == 0 ? "none" : string.Join("; ", gone.GroupBy(sample => blockOf[sample.PlotCode]).Select(block =>
            block.Count() == data.Plots.Count(plot => plot.Block == block.Key) ? $"block {block.Key} whole" : $"block {block.Key}: {string.Join(", ", block.Select(sample => sample.PlotCode))}"));
    }

    private static void Duplicates(HtmlPage page, SeasonData data)
    {
        var table = new HtmlTable("How extracts of one sample became its result", "quantity", "made by", "samples", "share") { Class = "text" };
        foreach (var quantity in new[] { QuantityCatalogue.Glucose, QuantityCatalogue.Sucrose })
        {
            var results = data.Results.Where(result => result.QuantityId == quantity.Id).ToList();
            foreach (var basis in results.GroupBy(result => result.Basis).OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal))
            {
                table.Row(quantity.Name, basis.Key, NumberText.Whole(basis.Count()), NumberText.Percent(basis.Count(), results.Count));
            }
        }

        page.Heading(3, "quality-duplicates", "Duplicates").Table(table);
        foreach (var one in data.Repeatability.GroupBy(fact => fact.QuantityId).Select(group => group.MaxBy(fact => fact.Version)!))
        {
            page.Note($"Repeatability of {QuantityCatalogue.Get(one.QuantityId).Name}: s_r = {one.Constant} mg/g at low level, {NumberText.Fixed(100 * (double)one.Relative, 1)} % of the level above; r = 2.8 s_r; {one.Pairs} pairs, {one.Source}{(one.Provisional ? "; provisional" : "")}.");
        }
    }

    private static void Limits(HtmlPage page, ReportContent content)
    {
        var censored = content.Analysis.Responses.Where(one => one.Pulls.Any(pull => pull.BelowLimit > 0)).ToList();
        page.Heading(3, "quality-limits", "Below the quantitation limit");
        if (censored.Count == 0)
        {
            page.Paragraph("No plot mean lies below its quantitation limit.");
            return;
        }

        page.List(censored.Select(one =>
            $"{one.Response.Title}: {one.Pulls.Sum(pull => pull.BelowLimit)} of {one.Pulls.Sum(pull => pull.Plots)} plot means ({NumberText.Percent(one.Pulls.Sum(pull => pull.BelowLimit), one.Pulls.Sum(pull => pull.Plots))}), in pull {string.Join(", ", one.Pulls.Where(pull => pull.BelowLimit > 0).Select(pull => pull.PullNo))}."));
    }

    private static void Exclusions(HtmlPage page, SeasonData data)
    {
        var table = new HtmlTable("Readings that do not count", "reading", "sample", "quantity", "as written", "file, line", "standing", "who, when, why") { Class = "text" };
        foreach (var aside in data.NotInEffect)
        {
            var changes = data.Changes.Where(change => change.Subject == "file:" + aside.FileSha256).ToList();
            table.Row(NumberText.Whole(aside.ReadingId), aside.Barcode, aside.Quantity, $"{aside.RawValue} {aside.RawUnit}", $"{aside.FileName}, {NumberText.Whole(aside.FileLine)}", aside.Standing,
                aside.ExcludedBy is { } who ? $"{who}: {aside.ExcludedWhy}"
                : changes.Count == 0 ? "by rule: a later file gave another value for a row already in effect; nobody has decided" : string.Join("; ", changes.Select(change => $"{change.Who}, {NumberText.Instant(change.At)}: {change.What}, {change.Why}")));
        }

        page.Heading(3, "quality-exclusions", "Exclusions and their reasons");
        if (table.IsEmpty)
        {
            page.Paragraph("Every reading of the trial's samples counts; none was set aside, superseded or taken out.");
            return;
        }

        page.Table(table);
    }

    private static void Alerts(HtmlPage page, SeasonData data)
    {
        var table = new HtmlTable("Alerts of the season: deviations from the protocol and what became of them", "alert", "rule", "level", "state", "what", "settled") { Class = "text" };
        foreach (var alert in data.Alerts)
        {
            table.Row(NumberText.Whole(alert.AlertId), alert.RuleName, alert.Level, alert.State, alert.Headline, alert.SettledBy is { } who ? $"{who}: {alert.SettledWhy}" : "");
        }

        page.Heading(3, "quality-alerts", "Deviations");
        if (table.IsEmpty)
        {
            page.Paragraph("No quality alert names this trial or its samples.");
            return;
        }

        page.Table(table).Note($"{data.Alerts.Count(alert => alert.State == "open")} of {data.Alerts.Count} are open: nobody has decided about them, and the readings concerned are in the tables as they are.");
    }
}
