using System.ComponentModel;
using System.Text;
using LabPipeline.Reporting.Exports;
using LabPipeline.Warehouse;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Exports a trial as comma-separated text, Parquet or a workbook.</summary>
internal sealed class ExportCommand(IAnsiConsole console) : AsyncCommand<ExportCommand.Settings>
{
    private static readonly Dictionary<string, ExportKind> Kinds = new(StringComparer.Ordinal)
    {
        ["plot-means"] = ExportKind.PlotMeans,
        ["sample-results"] = ExportKind.SampleResults,
        ["readings"] = ExportKind.Readings,
    };

    private static readonly Dictionary<string, ExportFormat> Formats = new(StringComparer.Ordinal)
    {
        ["csv"] = ExportFormat.Csv,
        ["parquet"] = ExportFormat.Parquet,
        ["xlsx"] = ExportFormat.Workbook,
    };

    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        if (settings.Out is not { } path)
        {
            // Nothing but the table goes to the console, so that it can be piped.
            await WriteAsync(settings, console.Profile.Out.Writer, cancellationToken);
            return ExitCode.Done;
        }

        var rows = await WriteFileAsync(settings, path, cancellationToken);
        console.MarkupLineInterpolated($"{rows} rows written to [bold]{path}[/].");
        return ExitCode.Done;
    }

    private static async Task<long> WriteFileAsync(Settings settings, string path, CancellationToken cancellationToken)
    {
        var rows = 0L;
        await WholeFile.WriteAsync(path, async stream =>
        {
            if (Formats[settings.Format] is not ExportFormat.Csv and var format)
            {
                rows = await WriteAsync(settings, (session, scope) => ExportStore.WriteAsync(session, Kinds[settings.What], scope, format, stream), cancellationToken);
                return;
            }

            var writer = new StreamWriter(stream, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
            await using (writer)
            {
                rows = await WriteAsync(settings, writer, cancellationToken);
            }
        }, cancellationToken);
        return rows;
    }

    private static Task<long> WriteAsync(Settings settings, TextWriter writer, CancellationToken cancellationToken) =>
        WriteAsync(settings, (session, scope) => ExportStore.WriteAsync(session, Kinds[settings.What], scope, writer), cancellationToken);

    private static async Task<long> WriteAsync(Settings settings, Func<WarehouseSession, ExportScope, Task<ExportOutcome>> write, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var scope = new ExportScope(settings.Trial.Trim(), settings.Pull);
        var outcome = await warehouse.ReadAsync(session => write(session, scope), cancellationToken);
        return outcome.State == ExportState.Written ? outcome.Rows : throw new StationException(ExitCode.NotFound, outcome.Explanation);
    }

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<TRIAL>")]
        [Description("Code of the trial.")]
        public string Trial { get; init; } = "";

        [CommandOption("--what <WHAT>")]
        [Description("plot-means, sample-results or readings.")]
        public string What { get; init; } = "";

        [CommandOption("--format <FORMAT>")]
        [Description("csv, parquet, or xlsx with a data dictionary sheet; the last two need --out.")]
        [DefaultValue("csv")]
        public string Format { get; init; } = "csv";

        [CommandOption("--pull <NUMBER>")]
        [Description("Only this pull; all of them when left out.")]
        public int? Pull { get; init; }

        [CommandOption("--out <FILE>")]
        [Description("Where to write; the console when left out.")]
        public string? Out { get; init; }

        public override ValidationResult Validate() => Kinds.ContainsKey(What)
            ? !Formats.ContainsKey(Format) ? ValidationResult.Error($"--format is '{Format}'; expected csv, parquet or xlsx.")
            : Format != "csv" && Out is null ? ValidationResult.Error($"--out is missing: a {Format} file cannot go to the console.")
            : ValidationResult.Success()
            : ValidationResult.Error($"--what is {(What.Length == 0 ? "missing" : $"'{What}'")}; expected plot-means, sample-results or readings.");
    }
}
