using System.ComponentModel;
using LabPipeline.Warehouse.Alerts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Notes that somebody has seen an alert.</summary>
internal sealed class SeenCommand(IAnsiConsole console) : AsyncCommand<SeenCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var outcome = await warehouse.WriteAsync(
            session => AlertStore.AcknowledgeAsync(session, settings.Number, settings.By, TimeProvider.System.GetUtcNow()), cancellationToken);
        AlertOutcomes.Require(outcome, settings.Number);
        console.MarkupLineInterpolated($"Alert {settings.Number} is seen by {settings.By}; it stays open until its cause is gone or it is settled.");
        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<NUMBER>")]
        [Description("The alert's number, as 'station alerts' shows it.")]
        public int Number { get; init; }

        [CommandOption("--by <NAME>")]
        [Description("Your name, for the change log.")]
        public string By { get; init; } = "";

        public override ValidationResult Validate() =>
            string.IsNullOrWhiteSpace(By) ? ValidationResult.Error("--by is missing: who has seen it?") : ValidationResult.Success();
    }
}
