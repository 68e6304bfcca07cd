using System.ComponentModel;
using LabPipeline.Reporting.Labels;
using LabPipeline.Reporting.Printing;
using LabPipeline.Warehouse.Plan;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Prints the labels of a pull.</summary>
internal sealed class LabelsCommand(IAnsiConsole console) : AsyncCommand<LabelsCommand.Settings>
{
    private const int ShownMost = 10;

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        PrintFonts.Use(settings.Fonts);
        var plan = PlanReading.ReadValid(settings.File);
        if (plan.Pulls.All(pull => pull.Number != settings.Pull))
        {
            throw new StationException(
                ExitCode.NotFound, $"Trial {plan.Code} has no pull {settings.Pull}; it has {string.Join(", ", plan.Pulls.Select(pull => pull.Number))}.");
        }

        var sheet = ReadSheet(settings);
        var blind = settings.BlindSeed is { } seed ? BlindCodes.Of(plan, seed) : null;
        var labels = settings.Halves ? LabelSet.Halves(plan, settings.Pull, blind, settings.EachTuber) : LabelSet.Samples(plan, settings.Pull, blind);
        var (pdf, faults) = LabelPrint.Pdf(sheet, labels, settings.First, TimeProvider.System.GetUtcNow());
        await WholeFile.WriteAsync(settings.Out, pdf ?? throw Refused(faults), cancellationToken);
        console.MarkupLineInterpolated($"{labels.Count} labels on sheet '{sheet.Name}' written to [bold]{settings.Out}[/]. Print at actual size, without fitting to the page.");
        if (blind is not null)
        {
            await WholeFile.WriteAsync(settings.BlindKey!, blind.ToCsv(), cancellationToken);
            console.MarkupLineInterpolated($"The key to the blind codes is in [bold]{settings.BlindKey}[/]: for the manager alone.");
        }

        return ExitCode.Done;
    }

    private static LabelSheet ReadSheet(Settings settings)
    {
        if (settings.Sheet is null)
        {
            return settings.Halves ? LabelSheet.Small : LabelSheet.Tags;
        }

        if (!File.Exists(settings.Sheet))
        {
            throw new StationException(ExitCode.NotFound, $"No file {settings.Sheet}; expected a sheet's geometry (docs/specs/labels.md shows one).");
        }

        var (sheet, faults) = LabelSheetFile.Read(File.ReadAllText(settings.Sheet), Path.GetFileName(settings.Sheet));
        return sheet ?? throw Refused(faults);
    }

    private static StationException Refused(IReadOnlyList<LabelFault> faults) => new(
        ExitCode.Faults,
        string.Join(Environment.NewLine, faults.Take(ShownMost).Select(fault => fault.ToString()).Append($"{faults.Count} faults; nothing was printed.")));

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : CommandSettings
    {
        [CommandArgument(0, "<FILE>")]
        [Description("The plan document (JSON).")]
        public string File { get; init; } = "";

        [CommandOption("--pull <NUMBER>")]
        [Description("The pull.")]
        public int Pull { get; init; }

        [CommandOption("--halves")]
        [Description("An S and an F label instead of one tag a sample.")]
        public bool Halves { get; init; }

        [CommandOption("--each-tuber")]
        [Description("With --halves: a pair for every tuber instead of every sample.")]
        public bool EachTuber { get; init; }

        [CommandOption("--blind-seed <NUMBER>")]
        [Description("Print a blind code in place of the treatment; the manager keeps seed and key.")]
        public long? BlindSeed { get; init; }

        [CommandOption("--blind-key <FILE>")]
        [Description("Where to write the key to the blind codes.")]
        public string? BlindKey { get; init; }

        [CommandOption("--sheet <FILE>")]
        [Description("Geometry of the sheet (JSON); A4 sheets of 14 tags or 65 small labels when left out.")]
        public string? Sheet { get; init; }

        [CommandOption("--first <NUMBER>")]
        [Description("Place of the first label, for a sheet that was begun.")]
        [DefaultValue(1)]
        public int First { get; init; } = 1;

        [CommandOption("--out <FILE>")]
        [Description("The PDF file.")]
        [DefaultValue("labels.pdf")]
        public string Out { get; init; } = "labels.pdf";

        [CommandOption("--fonts <FOLDER>")]
        [Description("Folder with fonts, when the computer has none.")]
        public string? Fonts { get; init; }

        public override ValidationResult Validate() =>
            Pull == 0 ? ValidationResult.Error("--pull is missing: which pull?")
            : EachTuber && !Halves ? ValidationResult.Error("--each-tuber goes with --halves.")
            : BlindSeed is < 0 or > TrialDesign.LargestSeed ? ValidationResult.Error($"--blind-seed is {BlindSeed}; expected a whole number from 0 to {TrialDesign.LargestSeed}.")
            : BlindSeed is null != BlindKey is null ? ValidationResult.Error("--blind-seed and --blind-key go together: codes without a key cannot be undone.")
            : ValidationResult.Success();
    }
}
