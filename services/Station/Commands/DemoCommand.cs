using System.ComponentModel;
using System.Diagnostics;
using LabPipeline.Station.Demo;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Sets up an invented season, processes it, and shows what was found and where to look.</summary>
internal sealed class DemoCommand(IAnsiConsole console) : AsyncCommand<DemoCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var lab = settings.Lab;
        var watch = Stopwatch.StartNew();
        var scenario = DemoScenario.Create(settings.Clean);
        var writer = new DemoWriter(lab);
        var setUp = writer.Write(scenario);
        console.MarkupLineInterpolated(setUp == DemoSetUp.Written
            ? $"An invented season of {scenario.Plan.Plots.Count} plots and {scenario.Plan.Pulls.Count} pulls lies in [bold]{lab.DataFolder}[/] as {scenario.Files.Count} instrument files."
            : (FormattableString)$"Going on with the season in [bold]{lab.DataFolder}[/].");
        await RunAsync(new DemoRun(lab), scenario, cancellationToken);
        await new DemoReport(console, lab).ShowAsync(scenario, watch.Elapsed, cancellationToken);
        return ExitCode.Done;
    }

    private Task RunAsync(DemoRun run, DemoScenario scenario, CancellationToken cancellationToken) => console.Progress()
        .AutoClear(true)
        .StartAsync(async progress =>
        {
            var task = progress.AddTask("reading and judging files", maxValue: scenario.Files.Count);
            await run.RunAsync(scenario, (settled, _) => task.Value = settled, cancellationToken);
        });

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandOption("--clean")]
        [Description("A season in which nothing goes wrong: no alert should stop the work.")]
        public bool Clean { get; init; }
    }
}
