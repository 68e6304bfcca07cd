using System.ComponentModel;
using System.Globalization;
using LabPipeline.Science.Barcodes;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LabPipeline.Station.Commands;

/// <summary>Follows a sample through the warehouse.</summary>
internal sealed class TrailCommand(IAnsiConsole console) : AsyncCommand<TrailCommand.Settings>
{
    public override async Task<int> ExecuteAsync(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var barcode = HalfCode.Read(settings.Barcode).Reading.Barcode?.Text ?? settings.Barcode.Trim().ToUpperInvariant();
        using var warehouse = await StationWarehouse.OpenAsync(settings.Lab, cancellationToken);
        var sample = await warehouse.ReadAsync(session => TrailStore.FindSampleAsync(session, barcode), cancellationToken);
        var readings = await warehouse.ReadAsync(session => TrailStore.ListReadingsAsync(session, barcode), cancellationToken);
        if (sample is null && readings.Count == 0)
        {
            throw new StationException(ExitCode.NotFound, $"Nothing is known of '{barcode}': it is in no plan and no file; check the tag.");
        }

        ShowSample(barcode, sample);
        ShowResults(await warehouse.ReadAsync(session => TrailStore.ListResultsAsync(session, barcode), cancellationToken));
        ShowReadings(readings);
        var alerts = await warehouse.ReadAsync(session => AlertStore.ListAsync(session, new AlertFilter { Barcode = barcode }), cancellationToken);
        foreach (var alert in alerts)
        {
            console.MarkupLineInterpolated($"Alert {alert.AlertId} ({alert.State}, {alert.Level}): {alert.Headline}");
        }

        return ExitCode.Done;
    }

    private void ShowSample(string barcode, TrailSample? sample)
    {
        if (sample is null)
        {
            console.MarkupLineInterpolated($"[bold]{barcode}[/] is in no plan; its readings wait for one.");
            return;
        }

        console.MarkupLineInterpolated(
            $"[bold]{sample.Barcode}[/]: trial {sample.TrialCode}, pull {sample.PullNo} due {sample.DueOn:yyyy-MM-dd}, block {sample.Block}, plot {sample.PlotCode}, clone {sample.CloneName}, treatment {sample.Treatment}, bay {sample.BayCode}");
    }

    private void ShowResults(IReadOnlyList<TrailResult> results)
    {
        var table = new Table().Title("Results").AddColumns("quantity", "value", "unit", "n", "s", "basis", "doubt", "from readings");
        foreach (var result in results)
        {
            table.AddRow(new[]
            {
                result.Quantity,
                (result.BelowLimit ? "below " : "") + Rounded(result.Value),
                UnitText.Of(result.Unit),
                result.N.ToString(CultureInfo.InvariantCulture),
                result.S is { } s ? Rounded(s) : "",
                result.Basis,
                result.InDoubt ? "in doubt" : "",
                Shorten(result.FromReadings),
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
    }

    private void ShowReadings(IReadOnlyList<TrailReading> readings)
    {
        var table = new Table().Title("Readings").AddColumns("no.", "quantity", "value", "as written", "piece", "instrument, run", "by", "file", "line", "standing");
        foreach (var reading in readings)
        {
            table.AddRow(new[]
            {
                reading.ReadingId.ToString(CultureInfo.InvariantCulture),
                reading.Quantity,
                (reading.BelowLimit ? "below " : "") + UnitText.With(Rounded(reading.Value), reading.Unit),
                UnitText.With(reading.RawValue, reading.RawUnit),
                Piece(reading),
                $"{reading.Instrument}, {reading.Run}",
                reading.Operator ?? "",
                reading.FileName,
                reading.Line.ToString(CultureInfo.InvariantCulture),
                Standing(reading),
            }.Select(Markup.Escape).ToArray());
        }

        console.Write(table);
    }

    private static string Standing(TrailReading reading) => reading switch
    {
        { ExcludedWhy: { } why } => $"{reading.Standing}: {why}",
        { DoubtCause: { } cause } => $"{reading.Standing}, in doubt: {cause}",
        _ => reading.Standing,
    };

    private static string Piece(TrailReading reading)
    {
        var parts = new List<string>(4);
        Add(parts, "extract", reading.Extract);
        Add(parts, "tuber", reading.Tuber?.ToString(CultureInfo.InvariantCulture));
        Add(parts, "slice", reading.Slice?.ToString(CultureInfo.InvariantCulture));
        Add(parts, "reading", reading.Replicate?.ToString(CultureInfo.InvariantCulture));
        return string.Join(", ", parts);
    }

    private static void Add(List<string> parts, string name, string? text)
    {
        if (text is not null)
        {
            parts.Add($"{name} {text}");
        }
    }

    private static string Rounded(decimal value) => Math.Round(value, 6).ToString("0.######", CultureInfo.InvariantCulture);

    private static string Shorten(string list) => list.Length <= 40 ? list : list[..37] + "...";

    /// <summary>What the command takes.</summary>
    internal sealed class Settings : StationSettings
    {
        [CommandArgument(0, "<BARCODE>")]
        [Description("The sample's barcode, or the code of one of its halves.")]
        public string Barcode { get; init; } = "";
    }
}
