using System.Globalization;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>Defects of every chip, scored by a person.</summary>
internal static class ChipSheet
{
    private const int SecondsAChip = 12;

    private const int WorstScore = 5;

    /// <summary>Reference chips with the score the laboratory agreed on, kept under nitrogen and scored again in every session.</summary>
    private static readonly (string Name, int Score)[] References = [("REF-CHIP-1", 1), ("REF-CHIP-4", 4)];

    /// <param name="session">The block scored.</param>
    /// <param name="shift">Points that the scorer gives too many.</param>
    public static DemoText Of(BenchSession session, int shift)
    {
        var sheet = string.Create(CultureInfo.InvariantCulture, $"CH{session.Day:yyMMdd}-{session.Block}");
        var text = new DemoText("\n").Line("sheet,sample,tuber,slice,stem_end,greening,hollow_heart,scorer,scored_at");
        var time = session.At(12, 45);
        time = AddReferences(text, sheet, session, shift, time);
        foreach (var sample in session.Samples)
        {
            foreach (var chip in sample.Chips)
            {
                text.Cells(
                    ',', sheet, sample.Barcode, DemoText.Count(chip.Tuber), DemoText.Count(chip.Slice), DemoText.Count(Math.Min(WorstScore, chip.StemEnd + shift)),
                    chip.Greening ? "1" : "0", chip.HollowHeart ? "1" : "0", session.Operator(2), DemoText.Time(time, "yyyy-MM-dd HH:mm:ss"));
                time = time.AddSeconds(SecondsAChip);
            }
        }

        AddReferences(text, sheet, session, shift, time);
        return text;
    }

    private static DateTime AddReferences(DemoText text, string sheet, BenchSession session, int shift, DateTime time)
    {
        foreach (var (name, score) in References)
        {
            text.Cells(
                ',', sheet, name, "", "", DemoText.Count(Math.Min(WorstScore, score + shift)), "", "", session.Operator(2), DemoText.Time(time, "yyyy-MM-dd HH:mm:ss"));
            time = time.AddSeconds(SecondsAChip);
        }

        return time;
    }
}
