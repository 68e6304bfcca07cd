using LabPipeline.Reporting.Figures;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;

namespace LabPipeline.Reporting.Report;

/// <summary>Controls of the season against the laboratory's limits, where these come from, and the results in doubt because of them.</summary>
internal static class ControlSection
{
    public static void Write(HtmlPage page, SeasonData data)
    {
        var charts = ControlSeries.Of(data);
        page.Heading(3, "quality-controls", "Controls");
        if (charts.Count == 0)
        {
            page.Paragraph("The files of this trial hold no control results that vary, and no limits are kept for any; there are no control charts.");
            return;
        }

        var table = new HtmlTable("Controls", "instrument", "material", "quantity", "results", "centre", "lower limit", "upper limit", "limits from", "beyond", "before any limits") { RowHeads = 3 };
        foreach (var chart in charts)
        {
            var last = chart.Limits.Count > 0 ? chart.Limits[^1] : null;
            table.Row(chart.Instrument, chart.Material, UnitNames.Spoken(chart.Quantity), NumberText.Whole(chart.Results.Count), NumberText.Significant((double?)last?.Centre, 5),
                NumberText.Significant((double?)last?.Lower, 5), NumberText.Significant((double?)last?.Upper, 5), last is null ? "no limits decided" : Source(last),
                last is null ? NumberText.None : NumberText.Whole(chart.Beyond), last is null ? NumberText.None : NumberText.Whole(chart.Unjudged));
        }

        page.Table(table).Note("Limits are those the laboratory has decided; each result is held against the limits in force when it was measured, by one rule here: beyond a limit. The newest limits are shown. The charts stand under Figures.");
        var none = charts.Where(chart => chart.Limits.Count == 0).ToList();
        if (none.Count > 0)
        {
            page.Note($"No limits are kept for {string.Join("; ", none.Select(chart => $"{UnitNames.Spoken(chart.Quantity)} of {chart.Material} on {chart.Instrument}"))}: these results are shown and judged by nothing.");
        }

        History(page, charts);
        Doubtful(page, data);
    }

    private static string Source(ControlLimitRow row) => row.Kind == ControlLimitKinds.Frozen ? $"{NumberText.Whole(row.Runs)} runs, frozen" : "stated target";

    private static void History(HtmlPage page, IReadOnlyList<ControlSeries> charts)
    {
        var table = new HtmlTable("Where the limits come from", "instrument", "limits of", "in force from", "kind", "decided by, on, why") { Class = "text" };
        foreach (var group in charts.SelectMany(chart => chart.Limits.Select(row => (chart, row)))
            .GroupBy(pair => (pair.chart.Instrument, pair.row.InForceFrom, Kind: Source(pair.row), pair.row.DecidedBy, pair.row.DecidedAt, pair.row.Why))
            .OrderBy(group => group.Key.Instrument, StringComparer.Ordinal).ThenBy(group => group.Key.InForceFrom))
        {
            table.Row(group.Key.Instrument, string.Join(", ", group.Select(pair => $"{pair.chart.Material}: {UnitNames.Spoken(pair.chart.Quantity)}")), NumberText.Instant(group.Key.InForceFrom), group.Key.Kind,
                $"{group.Key.DecidedBy}, {NumberText.Instant(group.Key.DecidedAt)}: {group.Key.Why}");
        }

        if (!table.IsEmpty)
        {
            page.Table(table);
        }
    }

    private static void Doubtful(HtmlPage page, SeasonData data)
    {
        var doubtful = data.Results.Where(result => result.InDoubt).GroupBy(result => result.QuantityId).ToList();
        page.Paragraph(doubtful.Count == 0
            ? "No result stands beside a failed control that nobody has released."
            : $"In doubt, because a reading behind them stands beside a failed control that nobody has released: {string.Join(", ", doubtful.Select(group => $"{group.Count()} results of {UnitNames.Spoken(QuantityCatalogue.Get(group.Key))}"))}. They are in the tables, where means that rest on any are marked {DoubtMark.Text}; beside them stand the means without.");
    }
}
