using System.ComponentModel;
using System.Globalization;
using LabPipeline.Warehouse.Alerts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Lists alerts.</summary>
internal sealed class AlertsCommand(IAnsiConsole console) : AsyncCommand<AlertsCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var filter = new AlertFilter { State = settings.All ? null : AlertStates.Open, Level = settings.Level, RuleName = settings.Rule };
        var alerts = await warehouse.ReadAsync(session => AlertStore.ListAsync(session, filter), cancellationToken);
        var table = new Table().AddColumns("no.", "level", "state", "rule", "what was found", "what to do");
        foreach (var alert in alerts)
        {
            table.AddRow(new[]
            {
                alert.AlertId.ToString(CultureInfo.InvariantCulture),
                alert.Level,
                alert.AcknowledgedBy is { } who && alert.State == AlertStates.Open ? $"open, seen by {who}" : alert.State,
                alert.RuleName,
                alert.Headline,
                alert.Advice,
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
        console.MarkupLineInterpolated($"{alerts.Count} alerts. 'station settle NUMBER --by NAME --why REASON' closes one.");
        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandOption("--all")]
        [Description("Also those that cleared or were settled.")]
        public bool All { get; init; }

        [CommandOption("--level <LEVEL>")]
        [Description("Only this level: block, hold, note.")]
        public string? Level { get; init; }

        [CommandOption("--rule <NAME>")]
        [Description("Only this rule.")]
        public string? Rule { get; init; }
    }
}
