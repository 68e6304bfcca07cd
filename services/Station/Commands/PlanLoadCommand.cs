using LabPipeline.Warehouse.Plan;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Loads a plan document.</summary>
internal sealed class PlanLoadCommand(IAnsiConsole console) : AsyncCommand<PlanSettings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, PlanSettings settings, CancellationToken cancellationToken)
    {
        var plan = PlanReading.ReadValid(settings.File);
        using var warehouse = await StationWarehouse.CreateAsync(settings.Lab, cancellationToken);
        var load = await warehouse.WriteAsync(
            session => PlanStore.LoadAsync(session, plan, TimeProvider.System.GetUtcNow(), settings.By), cancellationToken);
        if (load.State == PlanLoadState.Refused)
        {
            throw new StationException(
                ExitCode.Faults,
                string.Join(Environment.NewLine, load.Differences.Select(difference => difference.ToString()).Prepend("The plan contradicts what is stored; nothing was changed:")));
        }

        console.MarkupLineInterpolated($"[bold]{plan.Code}[/]: {Word(load.State)}; {load.NewSamples} samples registered.");
        if (load.JoinedBarcodes.Count > 0)
        {
            console.MarkupLineInterpolated($"{load.JoinedBarcodes.Count} of them had readings waiting, which now belong to them.");
        }

        return ExitCode.Done;
    }

    private static string Word(PlanLoadState state) => state switch
    {
        PlanLoadState.Loaded => "loaded",
        PlanLoadState.Extended => "extended",
        _ => "nothing new",
    };
}
