using System.ComponentModel;
using LabPipeline.Reporting.Planning;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Writes the pulls of plans as a calendar file.</summary>
internal sealed class CalendarCommand(IAnsiConsole console) : AsyncCommand<CalendarCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var plans = settings.Files.Select(PlanReading.ReadValid).ToList();
        var doubled = plans.GroupBy(plan => plan.Code, StringComparer.OrdinalIgnoreCase).FirstOrDefault(group => group.Count() > 1);
        if (doubled is not null)
        {
            throw new StationException(ExitCode.Faults, $"Found trial {doubled.Key} {doubled.Count()} times; expected each trial once. Nothing was written.");
        }

        await WholeFile.WriteAsync(settings.Out, PullCalendarFile.Of(plans, TimeProvider.System.GetUtcNow()), cancellationToken);
        console.MarkupLineInterpolated($"{plans.Sum(plan => plan.Pulls.Count)} pulls written to [bold]{settings.Out}[/].");
        foreach (var overlap in PullOverlap.Of(plans))
        {
            console.MarkupLineInterpolated($"[yellow]{overlap.Explanation}[/]");
        }

        return ExitCode.Done;
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILES>")]
        [Description("Plan documents (JSON) of the trials that share the bench.")]
        public string[] Files { get; init; } = [];

        [CommandOption("--out <FILE>")]
        [Description("The calendar file.")]
        [DefaultValue("pulls.ics")]
        public string Out { get; init; } = "pulls.ics";
    }
}
