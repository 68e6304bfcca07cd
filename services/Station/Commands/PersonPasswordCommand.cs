using LabPipeline.Board.People;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Sets a password anew: for whoever forgot theirs, or was locked out.</summary>
internal sealed class PersonPasswordCommand(IAnsiConsole console) : AsyncCommand<PersonSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, PersonSettings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        using var desk = new PeopleDesk(warehouse, TimeProvider.System);
        if (await desk.SetPasswordAsync(settings.Name, settings.ReadPassword(console), settings.By, cancellationToken) is { } fault)
        {
            throw new StationException(ExitCode.Faults, fault);
        }

        console.MarkupLineInterpolated($"The password of {PersonRules.Normal(settings.Name)} is set; every sign-in of theirs has ended.");
        return ExitCode.Done;
    }
}
