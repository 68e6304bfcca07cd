using LabPipeline.Warehouse.Alerts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Settles an alert.</summary>
internal sealed class SettleCommand(IAnsiConsole console) : AsyncCommand<AlertNumberSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, AlertNumberSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var outcome = await warehouse.WriteAsync(
            session => AlertStore.SettleAsync(session, settings.Number, settings.By, settings.Why, TimeProvider.System.GetUtcNow()), cancellationToken);
        AlertOutcomes.Require(outcome, settings.Number);
        console.MarkupLineInterpolated($"Alert {settings.Number} is settled by {settings.By}: {settings.Why}");
        return ExitCode.Done;
    }
}
