using System.Globalization;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Controls;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Computes limits of a control from the runs in the warehouse and keeps them.</summary>
internal sealed class ControlsFreezeCommand(IAnsiConsole console) : AsyncCommand<ChartSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, ChartSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var row = await warehouse.WriteAsync(session => FreezeAsync(session, settings), cancellationToken);
        console.MarkupLineInterpolated(
            CultureInfo.InvariantCulture,
            $"{row.Material} on {row.Instrument}, {settings.Quantity}: {row.Lower:0.####} to {row.Upper:0.####} {settings.Known.Unit} around {row.Centre:0.####}, frozen from {row.Runs} runs, version {row.Version}, in force from {row.InForceFrom:yyyy-MM-dd}.");
        return ExitCode.Done;
    }

    private static async Task<ControlLimitRow> FreezeAsync(WarehouseSession session, ChartSettings settings)
    {
        var now = TimeProvider.System.GetUtcNow();
        var openings = await ControlChartStore.ListOpeningsAsync(session, settings.Instrument, settings.Material, settings.Known.Id, DateTimeOffset.MinValue);
        if (openings.Count == 0)
        {
            throw new StationException(
                ExitCode.NotFound, $"No control '{settings.Material}' of {settings.Quantity} was measured on '{settings.Instrument}'; 'station controls list' shows what was.");
        }

        if (openings.Count < RuleDefaults.ControlRuns)
        {
            throw new StationException(
                ExitCode.Faults,
                string.Create(CultureInfo.InvariantCulture, $"Found {openings.Count} runs, expected {RuleDefaults.ControlRuns} or more; state a target with 'station controls target' until then."));
        }

        return await ControlLimitStore.KeepAsync(
            session,
            FrozenLimits.From(openings) with { Instrument = settings.Instrument, InForceFrom = settings.InForceFrom(now), DecidedAt = now, DecidedBy = settings.By, Why = settings.Why });
    }
}
