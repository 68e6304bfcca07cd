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
        var overlaps = await warehouse.ReadAsync(session => BenchPullStore.ListOpenAtOnceAsync(session, pull), cancellationToken);
        string[] warnings = [.. pull.Untimely(pull.LocalDay(now)) is { } untimely ? [untimely] : Array.Empty<string>(), .. overlaps.Select(overlap => overlap.Explanation)];
        await settings.WriteAsync(console, PickList.ToCsv(pull), () => PickList.Pdf(pull, warnings, now), cancellationToken);
        foreach (var warning in settings.Out is null ? [] : warnings)
        {
            console.MarkupLineInterpolated($"[yellow]{warning}[/]");
        }

        return ExitCode.Done;
    }
}
