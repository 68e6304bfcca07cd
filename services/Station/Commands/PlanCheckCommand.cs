using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Checks a plan document.</summary>
internal sealed class PlanCheckCommand(IAnsiConsole console) : Command<PlanSettings>
{
    public override int Execute(CommandContext context, PlanSettings settings, CancellationToken cancellationToken)
    {
        var plan = PlanReading.ReadValid(settings.File);
        console.MarkupLineInterpolated(
            $"[bold]{plan.Code}[/] is sound: {plan.Plots.Count} plots, {plan.Pulls.Count} pulls, {plan.Plots.Count * plan.Pulls.Count} samples.");
        return ExitCode.Done;
    }
}
