using System.ComponentModel;
using LabPipeline.Reporting.Report;
using LabPipeline.Warehouse;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Makes the season report of a trial.</summary>
internal sealed class SeasonReportCommand(IAnsiConsole console) : AsyncCommand<SeasonReportCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var outcome = await MakeAsync(warehouse, settings, cancellationToken);
        if (outcome.State is SeasonReportState.TrialNotFound or SeasonReportState.VersionNotFound)
        {
            throw new StationException(ExitCode.NotFound, outcome.Explanation);
        }

        var path = settings.Out ?? $"{settings.Trial}-{(outcome.Version is { } version ? $"report-{version}" : "draft")}.html";
        await WholeFile.WriteAsync(path, outcome.Page, cancellationToken);
        console.MarkupLineInterpolated($"{(outcome.Version is { } locked ? $"Report version {locked}" : "Draft")} written to [bold]{path}[/].");
        if (outcome.State == SeasonReportState.Differs)
        {
            console.MarkupLineInterpolated($"[bold]Not the locked bytes.[/] {outcome.Explanation}");
        }

        if (settings.Pdf)
        {
            await PrintAsync(settings, path, cancellationToken);
        }

        return outcome.State == SeasonReportState.Differs ? ExitCode.Faults : ExitCode.Done;
    }

    private static Task<SeasonReportOutcome> MakeAsync(LabWarehouse warehouse, Settings settings, CancellationToken cancellationToken)
    {
        var now = TimeProvider.System.GetUtcNow();
        return settings switch
        {
            { Lock: true } => warehouse.WriteAsync(session => SeasonReportStore.LockAsync(session, settings.Trial, settings.By, now), cancellationToken),
            { ReportVersion: { } version } => warehouse.ReadAsync(session => SeasonReportStore.AgainAsync(session, settings.Trial, version), cancellationToken),
            _ => warehouse.ReadAsync(session => SeasonReportStore.DraftAsync(session, settings.Trial, now), cancellationToken),
        };
    }

    private async Task PrintAsync(Settings settings, string path, CancellationToken cancellationToken)
    {
        var pdf = Path.ChangeExtension(path, ".pdf");
        if (PagePrinter.Find(settings.Chromium) is not { } program)
        {
            throw new StationException(ExitCode.NotFound, settings.Chromium is { } stated
                ? $"There is no program {stated}; the page is written, the PDF is not. Correct --chromium, or print the page from any browser."
                : "No Chromium was found on the search path; the page is written, the PDF is not. Install it, name it with --chromium, or print the page from any browser.");
        }

        if (await PagePrinter.PrintAsync(program, path, pdf, cancellationToken) is { } fault)
        {
            throw new StationException(ExitCode.Failed, $"The page is written, the PDF is not: {fault}");
        }

        console.MarkupLineInterpolated($"Printed to [bold]{pdf}[/].");
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<TRIAL>")]
        [Description("Code of the trial.")]
        public string Trial { get; init; } = "";

        [CommandOption("--out <FILE>")]
        [Description("The page to write; without it <TRIAL>-draft.html or <TRIAL>-report-<VERSION>.html.")]
        public string? Out { get; init; }

        [CommandOption("--lock")]
        [Description("Keep the data this report stands on under the next version, so that it can be made again byte by byte.")]
        public bool Lock { get; init; }

        [CommandOption("--by <NAME>")]
        [Description("Your name; needed with --lock.")]
        public string By { get; init; } = "";

        [CommandOption("--report <VERSION>")]
        [Description("Make a locked report again instead of reading the warehouse as it stands.")]
        public int? ReportVersion { get; init; }

        [CommandOption("--pdf")]
        [Description("Print it to PDF as well, with a headless Chromium.")]
        public bool Pdf { get; init; }

        [CommandOption("--chromium <PROGRAM>")]
        [Description("Path of Chromium; without it the search path is looked through.")]
        public string? Chromium { get; init; }

        public override ValidationResult Validate() =>
            Lock && string.IsNullOrWhiteSpace(By) ? ValidationResult.Error("--by is missing: who locks this report?")
            : Lock && ReportVersion is not null ? ValidationResult.Error("--lock makes a new version and --report makes an old one again; give one of them.")
            : ValidationResult.Success();
    }
}
