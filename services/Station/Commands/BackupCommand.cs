using LabPipeline.Intake.Keeping;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Copies the warehouse while everything runs.</summary>
internal sealed class BackupCommand(IAnsiConsole console) : AsyncCommand<StationSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, StationSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var path = await new BackupShelf(settings.Lab.BackupFolder).AddAsync(warehouse, TimeProvider.System.GetUtcNow(), cancellationToken)
            ?? throw new StationException(ExitCode.Failed, "SQL Server is backed up by its own jobs (docs/specs/sql-server.md); nothing was copied.");
        console.MarkupLineInterpolated($"The warehouse was copied to {path} and the copy is sound. Carry the archive folder along: it holds the files themselves.");
        return ExitCode.Done;
    }
}
