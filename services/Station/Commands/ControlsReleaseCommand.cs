using System.ComponentModel;
using System.Globalization;
using System.Text.Json;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Controls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Releases the readings of a run although a control failed: a named person answers for them.</summary>
internal sealed class ControlsReleaseCommand(IAnsiConsole console) : AsyncCommand<ControlsReleaseCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var failed = await warehouse.WriteAsync(session => ReleaseAsync(session, settings), cancellationToken);
        console.MarkupLineInterpolated(
            CultureInfo.InvariantCulture,
            $"{settings.By} answers for run {settings.Run} of {settings.Instrument} although {failed} of its controls failed: {settings.Why}");
        console.MarkupLine("The running station takes the mark 'in doubt' off its results. A control that fails later is not covered.");
        return ExitCode.Done;
    }

    private static async Task<int> ReleaseAsync(WarehouseSession session, Settings settings)
    {
        var run = await ControlEvidenceStore.FindAsync(session, settings.Instrument, settings.Run)
            ?? throw new StationException(ExitCode.NotFound, $"There is no run '{settings.Run}' of '{settings.Instrument}'; the alert names both.");
        var failed = run.Failed.Select(verdict => verdict.Point.Identity).ToList();
        if (failed.Count == 0)
        {
            throw new StationException(ExitCode.Faults, $"No control of run '{settings.Run}' failed; there is nothing to release.");
        }

        var now = TimeProvider.System.GetUtcNow();
        await ControlReleaseStore.AddAsync(session, new ControlRelease
        {
            Instrument = settings.Instrument,
            Run = settings.Run,
            Controls = JsonSerializer.Serialize(failed),
            ReleasedAt = now,
            ReleasedBy = settings.By,
            Why = settings.Why,
        });
        foreach (var alert in (await AlertStore.ListByScopesAsync(session, [run.Scope])).Where(alert => alert.State == AlertStates.Open))
        {
            await AlertStore.SettleAsync(session, alert.AlertId, settings.By, "released: " + settings.Why, now);
        }

        return failed.Count;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : SignedSettings
    {
        [CommandArgument(0, "<INSTRUMENT>")]
        [Description("The instrument, as the alert names it.")]
        public string Instrument { get; init; } = "";

        [CommandArgument(1, "<RUN>")]
        [Description("The run, as the alert names it.")]
        public string Run { get; init; } = "";
    }
}
