using System.Globalization;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>Peeling: masses from the bench balance in tabs and grams, and the score of the cleaned surface.</summary>
internal static class PeelingSheet
{
    public static DemoText Masses(BenchSession session)
    {
        var run = string.Create(CultureInfo.InvariantCulture, $"P{session.Day:yyMMdd}-{session.Block}");
        var noise = DemoRandom.For(run + " check");
        var text = new DemoText("\r\n").Line("sample\tsession\tbefore_g\tafter_g\tweighed\tby");
        var time = session.At(9, 15);
        text.Cells('\t', "CHECK-500", run, DemoText.Number(500 + (0.02 * noise.Normal()), 2), "", Written(time), session.Operator(0));
        foreach (var sample in session.Samples)
        {
            time = time.AddMinutes(3);
            text.Cells(
                '\t', sample.Barcode, run, DemoText.Number(sample.MassBeforePeel, 2), DemoText.Number(sample.MassAfterPeel, 2), Written(time), session.Operator(0));
        }

        text.Cells('\t', "CHECK-500", run, DemoText.Number(500 + (0.02 * noise.Normal()), 2), "", Written(time.AddMinutes(3)), session.Operator(0));
        return text;
    }

    public static DemoText Scores(BenchSession session)
    {
        var sheet = string.Create(CultureInfo.InvariantCulture, $"PS{session.Day:yyMMdd}-{session.Block}");
        var text = new DemoText("\n").Line("sheet,sample,cleaned_pct,judge,judged_at");
        var time = session.At(9, 20);
        foreach (var sample in session.Samples)
        {
            text.Cells(',', sheet, sample.Barcode, DemoText.Count(sample.CleanedSurface), session.Operator(1), DemoText.Time(time, "yyyy-MM-dd HH:mm"));
            time = time.AddMinutes(3);
        }

        return text;
    }

    private static string Written(DateTime time) => DemoText.Time(time, "MM/dd/yyyy HH:mm:ss");
}
