using System.ComponentModel;
using LabPipeline.Reporting.Planning;
using LabPipeline.Reporting.Printing;
using LabPipeline.Warehouse.Plan;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Draws the layout of an outline.</summary>
internal sealed class PlanDrawCommand(IAnsiConsole console) : AsyncCommand<PlanDrawCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        PrintFonts.Use(settings.Fonts);
        var drawn = DrawnPlan.Of(Read(settings.File), settings.Seed!.Value);
        var map = PlotMap.Of(drawn.Plan, settings.Columns, settings.Serpentine);
        var start = Path.Combine(settings.Out, drawn.Plan.Code);
        if (File.Exists(start + "-plan.json") && await File.ReadAllTextAsync(start + "-plan.json", cancellationToken) != drawn.Document && !settings.Anew)
        {
            throw new StationException(ExitCode.Faults, $"{start}-plan.json holds another layout; nothing was changed. Draw into another folder, or say --anew to put the new one in its place.");
        }

        // What can be refused is made before anything is written.
        var (svg, pdf) = (PlotMapFiles.Svg(map), PlotMapFiles.Pdf(map, TimeProvider.System.GetUtcNow()));
        await WholeFile.WriteAsync(start + "-plan.json", drawn.Document, cancellationToken);
        await WholeFile.WriteAsync(start + "-map.csv", map.ToCsv(), cancellationToken);
        await WholeFile.WriteAsync(start + "-map.svg", svg, cancellationToken);
        await WholeFile.WriteAsync(start + "-map.pdf", pdf, cancellationToken);
        console.MarkupLineInterpolated($"[bold]{drawn.Plan.Code}[/] drawn with seed {settings.Seed}: {drawn.Plan.Plots.Count} plots in {drawn.Plan.Design.Blocks.Count} blocks.");
        console.MarkupLineInterpolated($"Plan and plot map (CSV, SVG, PDF) written to [bold]{start}-…[/]; 'plan check' and 'plan load' take the plan.");
        return ExitCode.Done;
    }

    private static PlanOutline Read(string path)
    {
        if (!File.Exists(path))
        {
            throw new StationException(ExitCode.NotFound, $"No file {path}; expected an outline, a plan document without plots (docs/specs/planning.md).");
        }

        var name = Path.GetFileName(path);
        var (outline, faults) = PlanOutline.Read(File.ReadAllText(path), name);
        return outline ?? throw new StationException(
            ExitCode.Faults, string.Join(Environment.NewLine, faults.Select(fault => fault.Describe(name)).Append($"{faults.Count} faults; nothing was drawn.")));
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<OUTLINE>")]
        [Description("The plan document without plots (JSON).")]
        public string File { get; init; } = "";

        [CommandOption("--seed <NUMBER>")]
        [Description("The seed: a whole number chosen and written down before the draw.")]
        public long? Seed { get; init; }

        [CommandOption("--columns <NUMBER>")]
        [Description("Plots in a row of the field; a number that divides the block when left out.")]
        public int? Columns { get; init; }

        [CommandOption("--serpentine")]
        [Description("Number every second row backwards.")]
        public bool Serpentine { get; init; }

        [CommandOption("--anew")]
        [Description("Put the layout in the place of another one drawn before.")]
        public bool Anew { get; init; }

        [CommandOption("--out <FOLDER>")]
        [Description("Where to write.")]
        [DefaultValue(".")]
        public string Out { get; init; } = ".";

        [CommandOption("--fonts <FOLDER>")]
        [Description("Folder with fonts, when the computer has none.")]
        public string? Fonts { get; init; }

        public override ValidationResult Validate() =>
            Seed is null ? ValidationResult.Error("--seed is missing: choose a whole number and write it down before the draw.")
            : Seed is < 0 or > TrialDesign.LargestSeed ? ValidationResult.Error($"--seed is {Seed}; expected a whole number from 0 to {TrialDesign.LargestSeed}.")
            : Columns is < 1 or > 100 ? ValidationResult.Error($"--columns is {Columns}; expected 1 to 100.")
            : ValidationResult.Success();
    }
}
