using System.Globalization;
using LabPipeline.Hosting;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Plan;
using Spectre.Console;

namespace LabPipeline.Station.Demo;

/// <summary>Prints what the pipeline found in the demonstration season, beside what was planted in it.</summary>
internal sealed class DemoReport(IAnsiConsole console, LabOptions lab)
{
    private const int Everything = 10_000;

    public async Task ShowAsync(DemoScenario scenario, TimeSpan elapsed, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(lab, cancellationToken);
        var summary = await warehouse.ReadAsync(DemoProgressStore.SummariseAsync, cancellationToken);
        var alerts = await warehouse.ReadAsync(session => AlertStore.ListAsync(session, new AlertFilter { Most = Everything }), cancellationToken);
        var arrivals = await warehouse.ReadAsync(session => ArrivalListStore.ListAsync(session, null), cancellationToken);
        if (!scenario.IsClean)
        {
            ShowTroubles(DemoFindings.Match(scenario.Troubles, alerts, arrivals));
        }

        ShowSummary(summary, alerts, arrivals, elapsed);
        ShowWhereToLook(scenario, alerts);
    }

    private void ShowTroubles(IReadOnlyList<DemoFinding> findings)
    {
        var table = new Table().Title("Planted in the season, and how it was found").AddColumns("planted", "where", "found", "by");
        foreach (var finding in findings)
        {
            table.AddRow(Markup.Escape(finding.Trouble.What), Markup.Escape(finding.Trouble.Where), finding.IsFound ? "yes" : "[bold]NO[/]", Markup.Escape(finding.By));
        }

        console.Write(table);
    }

    private void ShowSummary(DemoSummary summary, IReadOnlyList<Alert> alerts, IReadOnlyList<ArrivalListing> arrivals, TimeSpan elapsed)
    {
        var states = string.Join(", ", arrivals.CountBy(row => row.State).OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Value} {pair.Key}"));
        var levels = string.Join(", ", alerts.Where(alert => alert.State == AlertStates.Open).CountBy(alert => alert.Level).OrderBy(pair => pair.Key, StringComparer.Ordinal).Select(pair => $"{pair.Value} {pair.Key}"));
        console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"{arrivals.Count} files: {states}.");
        console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"{summary.Readings:N0} readings; {summary.Results:N0} results for {summary.SamplesWithResults} of {summary.Samples} samples.");
        console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"Open alerts: {(levels.Length == 0 ? "none" : levels)}. Done in {elapsed.TotalSeconds:0.0} s.");
    }

    private void ShowWhereToLook(DemoScenario scenario, IReadOnlyList<Alert> alerts)
    {
        var barcode = alerts.FirstOrDefault(alert => alert.Barcode is not null)?.Barcode ?? PlanSamples.Of(scenario.Plan)[0].Barcode.Text;
        console.WriteLine();
        console.MarkupLine("Where to look next:");
        console.WriteLine($"  warehouse   {lab.WarehouseFile}  (views v_sample_result, v_plot_pull, v_season_grid, v_qc_alert)");
        console.WriteLine($"  alert file  {Path.Combine(Path.GetFullPath(lab.DataFolder), "alerts.jsonl")}");
        console.WriteLine($"  alerts      dotnet run --project services/Station -- alerts{Data}");
        console.WriteLine($"  season      dotnet run --project services/Station -- season grid {scenario.Plan.Code}{Data}");
        console.WriteLine($"  arrivals    dotnet run --project services/Station -- arrivals --state refused{Data}");
        console.WriteLine($"  one sample  dotnet run --project services/Station -- trail {barcode}{Data}");
        console.WriteLine();
        console.MarkupLine("To open the board, the lab's web pages, at http://127.0.0.1:5080:");
        console.WriteLine($"  dotnet run --project services/Station -- person add YOUR.NAME --role administer{Data}");
        console.WriteLine($"  dotnet run --project services/Station -- run{Data}");
    }

    private string Data => lab.DataFolder == new LabOptions().DataFolder ? "" : $" --data {lab.DataFolder}";
}
