using LabPipeline.Warehouse.Facts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Takes a file out again.</summary>
internal sealed class TakeOutCommand(IAnsiConsole console) : AsyncCommand<FileSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, FileSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var name = await warehouse.WriteAsync(
            async session =>
            {
                var file = await settings.FindAsync(session);
                if (file.State is not (FileState.Stored or FileState.Waiting))
                {
                    throw new StationException(ExitCode.Faults, $"{file.Name} is {file.State}; only a stored or waiting file can be taken out.");
                }

                await FileCorrections.TakeOutAsync(session, file, settings.By, settings.Why, TimeProvider.System.GetUtcNow());
                return file.Name;
            },
            cancellationToken);
        console.MarkupLineInterpolated($"{name} is taken out. The running station computes the samples anew; drop the file again to read it once more.");
        return ExitCode.Done;
    }
}
