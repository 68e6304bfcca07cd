using LabPipeline.Reporting.Bench;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Prints which bags to bring for a pull.</summary>
internal sealed class PickListCommand(IAnsiConsole console) : AsyncCommand<PullSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, PullSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var pull = await settings.FindAsync(warehouse, cancellationToken);
        var now = TimeProvider.System.GetUtcNow();
        var today = pull.LocalDay(now);
        await settings.WriteAsync(console, PickList.ToCsv(pull), () => PickList.Pdf(pull, today, now), cancellationToken);
        if (settings.Out is not null && pull.Untimely(today) is { } warning)
        {
            console.MarkupLineInterpolated($"[yellow]{warning}[/]");
        }

        return ExitCode.Done;
    }
}
