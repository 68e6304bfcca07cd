using LabPipeline.Warehouse.Plan;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Writes the sample list of a plan.</summary>
internal sealed class SamplesCommand(IAnsiConsole console) : Command<PlanSettings>
{
    public override int Execute(CommandContext context, PlanSettings settings, CancellationToken cancellationToken)
    {
        var list = SampleList.Of(PlanReading.ReadValid(settings.File));
        if (settings.Out is { } path)
        {
            File.WriteAllText(path, list);
            console.MarkupLineInterpolated($"Written to [bold]{path}[/].");
        }
        else
        {
            console.Profile.Out.Writer.Write(list);
        }

        return ExitCode.Done;
    }
}
