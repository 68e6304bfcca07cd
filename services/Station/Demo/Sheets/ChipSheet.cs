using System.Globalization;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>Defects of every chip, scored by a person.</summary>
internal static class ChipSheet
{
    private const int SecondsAChip = 12;

    public static DemoText Of(BenchSession session)
    {
        var sheet = string.Create(CultureInfo.InvariantCulture, $"CH{session.Day:yyMMdd}-{session.Block}");
        var text = new DemoText("\n").Line("sheet,sample,tuber,slice,stem_end,greening,hollow_heart,scorer,scored_at");
        var time = session.At(12, 45);
        foreach (var sample in session.Samples)
        {
            foreach (var chip in sample.Chips)
            {
                text.Cells(
                    ',', sheet, sample.Barcode, DemoText.Count(chip.Tuber), DemoText.Count(chip.Slice), DemoText.Count(chip.StemEnd),
                    chip.Greening ? "1" : "0", chip.HollowHeart ? "1" : "0", session.Operator(2), DemoText.Time(time, "yyyy-MM-dd HH:mm:ss"));
                time = time.AddSeconds(SecondsAChip);
            }
        }

        return text;
    }
}
