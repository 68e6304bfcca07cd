using System.ComponentModel;
using System.Text;
using LabPipeline.Reporting.Exports;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Exports a trial as comma-separated text.</summary>
internal sealed class ExportCommand(IAnsiConsole console) : AsyncCommand<ExportCommand.Settings>
{
    private static readonly Dictionary<string, ExportKind> Kinds = new(StringComparer.Ordinal)
    {
        ["plot-means"] = ExportKind.PlotMeans,
        ["sample-results"] = ExportKind.SampleResults,
        ["readings"] = ExportKind.Readings,
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

    /// <summary>The file appears whole or not at all; one that was there stays until then.</summary>
    private static async Task<long> WriteFileAsync(Settings settings, string path, CancellationToken cancellationToken)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        if (!Directory.Exists(folder))
        {
            throw new StationException(ExitCode.NotFound, $"There is no folder {folder} for --out; make it first.");
        }

        var unfinished = $"{path}.{Path.GetRandomFileName()}";
        try
        {
            long rows;
            await using (var file = new FileStream(unfinished, FileMode.CreateNew, FileAccess.Write, FileShare.None))
            await using (var writer = new StreamWriter(file, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)))
            {
                rows = await WriteAsync(settings, writer, cancellationToken);
                await writer.FlushAsync(cancellationToken);
                file.Flush(flushToDisk: true);
            }

            File.Move(unfinished, path, overwrite: true);
            return rows;
        }
        finally
        {
            File.Delete(unfinished);
        }
    }

    private static async Task<long> WriteAsync(Settings settings, TextWriter writer, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var scope = new ExportScope(settings.Trial.Trim(), settings.Pull);
        var outcome = await warehouse.ReadAsync(session => ExportStore.WriteAsync(session, Kinds[settings.What], scope, writer), cancellationToken);
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

        [CommandOption("--pull <NUMBER>")]
        [Description("Only this pull; all of them when left out.")]
        public int? Pull { get; init; }

        [CommandOption("--out <FILE>")]
        [Description("Where to write; the console when left out.")]
        public string? Out { get; init; }

        public override ValidationResult Validate() => Kinds.ContainsKey(What)
            ? ValidationResult.Success()
            : ValidationResult.Error($"--what is {(What.Length == 0 ? "missing" : $"'{What}'")}; expected plot-means, sample-results or readings.");
    }
}
