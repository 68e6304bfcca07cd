using LabPipeline.Warehouse.Facts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Accepts an edited re-export.</summary>
internal sealed class AcceptCommand(IAnsiConsole console) : AsyncCommand<FileSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, FileSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var (name, count) = await warehouse.WriteAsync(
            async session =>
            {
                var file = await settings.FindAsync(session);
                return (file.Name, await FileCorrections.AcceptAsync(session, file, settings.By, settings.Why, TimeProvider.System.GetUtcNow()));
            },
            cancellationToken);
        if (count == 0)
        {
            throw new StationException(ExitCode.Faults, $"{name} holds no contested values; nothing was changed.");
        }

        console.MarkupLineInterpolated($"{count} values of {name} are in effect now; those they contradict are kept as superseded.");
        return ExitCode.Done;
    }
}
