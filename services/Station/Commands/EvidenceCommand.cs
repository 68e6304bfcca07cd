using System.ComponentModel;
using System.Globalization;
using LabPipeline.Reporting.Tracing;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Follows a number of a season report to its readings.</summary>
internal sealed class EvidenceCommand(IAnsiConsole console) : AsyncCommand<EvidenceCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var id = settings.Id.Trim().ToUpperInvariant();
        var trail = await warehouse.ReadAsync(session => EvidenceStore.FindAsync(session, settings.Trial, id), cancellationToken)
            ?? throw new StationException(ExitCode.NotFound, $"There is no evidence '{id}' of trial '{settings.Trial}'; the name stands beside the samples in annex B of its report, such as E03-005: pull 3, fifth treatment.");
        console.MarkupLineInterpolated($"[bold]{trail.Id}[/]: pull {trail.PullNo}, treatment {trail.Treatment}, samples {string.Join(", ", trail.Barcodes)}");
        ShowReadings(trail, settings.Quantity);
        ShowChanges(trail);
        return ExitCode.Done;
    }

    private void ShowReadings(EvidenceTrail trail, string? quantity)
    {
        var table = new Table().Title("Readings").AddColumns("no.", "plot", "sample", "quantity", "as written", "piece", "instrument, run", "by", "file", "line", "profile", "method", "standing");
        foreach (var reading in trail.Readings.Where(reading => quantity is null || reading.Quantity == quantity))
        {
            table.AddRow(new[]
            {
                reading.ReadingId.ToString(CultureInfo.InvariantCulture),
                reading.PlotCode,
                reading.Barcode,
                reading.Quantity,
                UnitText.With(reading.RawValue, reading.RawUnit),
                Piece(reading),
                $"{reading.Instrument}, {reading.Run}",
                reading.Operator ?? "",
                reading.FileName,
                reading.FileLine.ToString(CultureInfo.InvariantCulture),
                $"{reading.Profile} {reading.ProfileVersion}",
                reading.Method ?? "",
                reading.Standing,
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
    }

    private void ShowChanges(EvidenceTrail trail)
    {
        var table = new Table().Title("Who did what, and why").AddColumns("when (UTC)", "who", "what", "to", "why");
        foreach (var change in trail.Changes)
        {
            table.AddRow(new[] { change.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture), change.Who, change.What, change.Subject, change.Why }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
    }

    private static string Piece(EvidenceReading reading) => string.Join(", ", new (string Name, object? Value)[]
    {
        ("extract", reading.Extract), ("tuber", reading.Tuber), ("slice", reading.Slice), ("reading", reading.Replicate),
    }.Where(part => part.Value is not null).Select(part => string.Create(CultureInfo.InvariantCulture, $"{part.Name} {part.Value}")));

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<TRIAL>")]
        [Description("Code of the trial.")]
        public string Trial { get; init; } = "";

        [CommandArgument(1, "<EVIDENCE>")]
        [Description("Name of the evidence as the season report prints it, such as E03-005.")]
        public string Id { get; init; } = "";

        [CommandOption("--quantity <NAME>")]
        [Description("Readings of one quantity only.")]
        public string? Quantity { get; init; }
    }
}
