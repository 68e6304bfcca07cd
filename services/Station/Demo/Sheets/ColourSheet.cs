using System.Globalization;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>Colour of every chip: meter 1 writes comma-separated text, the spare meter 2 colour text of ISO 28178.</summary>
internal static class ColourSheet
{
    private const int SecondsAChip = 15;

    private static readonly DemoChip Tile = new(0, 0, 55.2, 2.1, 15.6, 0, false, false);

    /// <param name="session">The block read.</param>
    /// <param name="samples">How many of its samples; fewer when the run was exported before its end, without the closing tile.</param>
    /// <param name="tileShift">Hunter L by which the closing tile reads too high.</param>
    public static DemoText OfMeter1(BenchSession session, int samples, double tileShift)
    {
        var text = new DemoText("\r\n")
            .Line("Colour meter 1")
            .Line("Hunter L a b, illuminant C, observer 2 degrees")
            .Line("sample,tuber,slice,L,a,b,session,read_at,operator");
        var run = RunOf("C1-", session);
        foreach (var reading in Readings(session, run, samples, tileShift))
        {
            text.Cells(
                ',', reading.Sample, Piece(reading.Chip.Tuber), Piece(reading.Chip.Slice),
                DemoText.Number(reading.Chip.L, 2), DemoText.Number(reading.Chip.A, 2), DemoText.Number(reading.Chip.B, 2),
                run, DemoText.Time(reading.At, "yyyy-MM-dd HH:mm:ss"), session.Operator(0));
        }

        return text;
    }

    public static DemoText OfMeter2(BenchSession session, double tileShift)
    {
        var run = RunOf("C2-", session);
        var readings = Readings(session, run, session.Samples.Count, tileShift).ToList();
        var text = new DemoText("\n")
            .Line("CGATS.17")
            .Line("ORIGINATOR \"chip laboratory\"")
            .Line("INSTRUMENTATION \"colour meter 2\"")
            .Line("KEYWORD \"SESSION\"")
            .Line($"SESSION \"{run}\"")
            .Line("KEYWORD \"OPERATOR\"")
            .Line($"OPERATOR \"{session.Operator(0)}\"")
            .Line("NUMBER_OF_FIELDS 7")
            .Line("BEGIN_DATA_FORMAT")
            .Line("SAMPLE_ID TUBER SLICE HUNTER_L HUNTER_A HUNTER_B READ_AT")
            .Line("END_DATA_FORMAT")
            .Line($"NUMBER_OF_SETS {DemoText.Count(readings.Count)}")
            .Line("BEGIN_DATA");
        foreach (var reading in readings)
        {
            text.Cells(
                '\t', reading.Sample, QuotedPiece(reading.Chip.Tuber), QuotedPiece(reading.Chip.Slice),
                DemoText.Number(reading.Chip.L, 2), DemoText.Number(reading.Chip.A, 2), DemoText.Number(reading.Chip.B, 2),
                DemoText.Time(reading.At, "yyyy-MM-ddTHH:mm:ss"));
        }

        return text.Line("END_DATA");
    }

    private static IEnumerable<(string Sample, DemoChip Chip, DateTime At)> Readings(BenchSession session, string run, int samples, double tileShift)
    {
        var noise = DemoRandom.For(run + " tile");
        var time = session.At(11, 45);
        yield return ("CHECK-TILE", TileRead(noise), time);
        foreach (var sample in session.Samples.Take(samples))
        {
            foreach (var chip in sample.Chips)
            {
                time = time.AddSeconds(SecondsAChip);
                yield return (sample.Barcode, chip, time);
            }
        }

        if (samples == session.Samples.Count)
        {
            var tile = TileRead(noise);
            yield return ("CHECK-TILE", tile with { L = tile.L + tileShift }, time.AddMinutes(1));
        }
    }

    private static DemoChip TileRead(DemoRandom noise) => Tile with
    {
        L = Tile.L + (0.05 * noise.Normal()),
        A = Tile.A + (0.03 * noise.Normal()),
        B = Tile.B + (0.04 * noise.Normal()),
    };

    private static string RunOf(string meter, BenchSession session) => string.Create(CultureInfo.InvariantCulture, $"{meter}{session.Day:yyMMdd}-{session.Block}");

    private static string Piece(int number) => number == 0 ? "" : DemoText.Count(number);

    private static string QuotedPiece(int number) => number == 0 ? "\"\"" : DemoText.Count(number);
}
