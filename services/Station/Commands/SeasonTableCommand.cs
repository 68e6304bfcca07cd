using System.ComponentModel;
using LabPipeline.Reporting.Report;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Shows the analysis of variance and the means of one result.</summary>
internal sealed class SeasonTableCommand(IAnsiConsole console) : AsyncCommand<SeasonTableCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var tables = await warehouse.ReadAsync(session => SeasonTableStore.ListAsync(session, settings.Trial, settings.Quantity, settings.Pull), cancellationToken)
            ?? throw new StationException(ExitCode.NotFound, $"Trial '{settings.Trial}' is not in the warehouse. Check the code, or load the trial's plan.");
        if (tables.Count == 0)
        {
            throw new StationException(ExitCode.NotFound, $"Trial {settings.Trial} has no {settings.Quantity}{(settings.Pull is { } pull ? $" of pull {pull}" : "")}.");
        }

        foreach (var printed in tables)
        {
            var table = new Table().Title(Markup.Escape(printed.Title)).AddColumns([.. printed.Columns]);
            foreach (var row in printed.Rows)
            {
                table.AddRow([.. row.Select(Markup.Escape)]);
            }

            console.Write(table);
        }

        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<TRIAL>")]
        [Description("Code of the trial.")]
        public string Trial { get; init; } = "";

        [CommandOption("--quantity <NAME>")]
        [Description("The result, such as glucose, sucrose or mean_hunter_l.")]
        [DefaultValue("glucose")]
        public string Quantity { get; init; } = "glucose";

        [CommandOption("--pull <NUMBER>")]
        [Description("One pull only.")]
        public int? Pull { get; init; }

        public override ValidationResult Validate() => SeasonTableStore.Quantities.Contains(Quantity)
            ? ValidationResult.Success()
            : ValidationResult.Error($"--quantity is '{Quantity}'; expected one of {string.Join(", ", SeasonTableStore.Quantities)}.");
    }
}
