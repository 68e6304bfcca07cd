using System.ComponentModel;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>A file by its name or the beginning of its SHA-256, with who and why.</summary>
internal sealed class FileSettings : SignedSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("File name, or the beginning of its SHA-256, as 'station arrivals' shows it.")]
    public string File { get; init; } = "";

    /// <exception cref="StationException">No file fits, or several do.</exception>
    public async Task<SourceFile> FindAsync(WarehouseSession session)
    {
        var found = await ArrivalListStore.FindFilesAsync(session, File);
        return found.Count switch
        {
            1 => found[0],
            0 => throw new StationException(ExitCode.NotFound, $"No file '{File}' has arrived; 'station arrivals' lists them."),
            _ => throw new StationException(
                ExitCode.NotFound,
                $"{found.Count} files fit '{File}'; name one by its SHA-256: {string.Join(", ", found.Select(file => $"{file.Sha256[..12]} ({file.Name})"))}."),
        };
    }
}
