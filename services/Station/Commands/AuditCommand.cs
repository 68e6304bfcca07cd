using LabPipeline.Intake.Keeping;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Holds the warehouse against the archive now; the services do it once a day by themselves.</summary>
internal sealed class AuditCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var report = await new ArchiveAudit(warehouse, settings.Lab.ArchiveFolder).RunAsync(cancellationToken);
        await warehouse.WriteAsync(session => report.NoteAsync(session, "station audit", TimeProvider.System.GetUtcNow()), cancellationToken);
        foreach (var fault in report.Faults)
        {
            console.MarkupLineInterpolated($"[red]{fault}[/]");
        }

        console.MarkupLineInterpolated($"{report.Files} files in the ledger, {report.Compared} compared line by line with the archive, {report.Faults.Count} faults.");
        return report.IsClean ? ExitCode.Done : ExitCode.Faults;
    }
}
