using System.Globalization;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse.Controls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Lists control charts with their limits.</summary>
internal sealed class ControlsListCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var charts = await warehouse.ReadAsync(ControlChartStore.ListAsync, cancellationToken);
        var table = new Table().AddColumns("instrument", "control", "quantity", "runs", "newest", "limits", "from", "decided by");
        foreach (var chart in charts)
        {
            table.AddRow(new[]
            {
                chart.Instrument,
                chart.Material,
                chart.Quantity.Name,
                chart.Openings.Count.ToString(CultureInfo.InvariantCulture),
                chart.Openings.Count == 0 ? "" : UnitText.With(Shown(chart.Openings[^1].Point.Value), chart.Quantity.Unit.Symbol),
                chart.Limits is { } limits ? $"{Shown(limits.Lower)} to {Shown(limits.Upper)}" : "none: not judged",
                chart.Limits is { } known ? Origin(known) : "",
                chart.Limits is { } row ? $"{row.DecidedBy}, {row.DecidedAt:yyyy-MM-dd}: {row.Why}" : "",
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
        console.MarkupLineInterpolated(
            CultureInfo.InvariantCulture,
            $"{charts.Count} charts. 'controls target' states a target until there are {RuleDefaults.ControlRuns} runs, 'controls freeze' computes limits from them.");
        return ExitCode.Done;
    }

    private static string Origin(ControlLimitRow row) => row.Kind == ControlLimitKinds.Frozen
        ? string.Create(CultureInfo.InvariantCulture, $"frozen from {row.Runs} runs, version {row.Version}")
        : string.Create(CultureInfo.InvariantCulture, $"stated target, version {row.Version}");

    private static string Shown(decimal value) => Math.Round(value, 4).ToString("0.####", CultureInfo.InvariantCulture);
}
