using System.ComponentModel;
using LabPipeline.Board.People;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Makes somebody who may sign in to the board; the first administrator comes from here.</summary>
internal sealed class PersonAddCommand(IAnsiConsole console) : AsyncCommand<PersonAddCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var password = settings.ReadPassword(console);
        using var warehouse = await StationWarehouse.CreateAsync(settings.Lab, cancellationToken);
        using var desk = new PeopleDesk(warehouse, TimeProvider.System);
        if (await desk.AddAsync(settings.Name, RoleNames.Find(settings.Role)!.Value, password, settings.By, cancellationToken) is { } fault)
        {
            throw new StationException(ExitCode.Faults, fault);
        }

        console.MarkupLineInterpolated($"{PersonRules.Normal(settings.Name)} may sign in to the board with the role {settings.Role}.");
        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : PersonSettings
    {
        [CommandOption("--role <ROLE>")]
        [Description("look, bench, manage or administer; each includes those before it.")]
        [DefaultValue(RoleNames.Look)]
        public string Role { get; init; } = RoleNames.Look;

        public override ValidationResult Validate() => RoleNames.Find(Role) is not null
            ? ValidationResult.Success()
            : ValidationResult.Error($"--role is '{Role}'; expected {string.Join(", ", RoleNames.All)}.");
    }
}
