using System.Globalization;
using System.Text;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>Runs of the two sugar analysers: the same assay, written in two dialects.</summary>
internal static class SugarSheet
{
    private const int ControlEvery = 12;
    private const double LowControl = 0.050;
    private const double HighControl = 0.500;
    private const double MillimolesPerGram = 1000 / 180.156;

    public static bool IsAnalyserA(string block) => block is "1" or "2";

    /// <summary>Analyser A: commas, decimal points, mg/dL, ISO times, UTF-8 with a byte order mark.</summary>
    public static DemoText OfAnalyserA(BenchSession session)
    {
        var text = new DemoText("\r\n").Line("sample,extract,fresh_mass_g,made_up_to_ml,dilution,glucose_mg_dl,total_glucose_mg_dl,run,measured_at,operator");
        var run = RunOf("A", session);
        foreach (var row in Rows(session, run))
        {
            text.Cells(
                ',', row.Sample, row.Extract, row.Mass, row.Volume, row.Dilution,
                DemoText.Number(row.Glucose * 100, 2), DemoText.Number(row.Total * 100, 2),
                run, DemoText.Time(row.At, "yyyy-MM-ddTHH:mm:ss"), session.Operator(1));
        }

        return text;
    }

    /// <summary>Analyser B: semicolons, decimal commas, mmol/L, day.month.year, UTF-16 little endian.</summary>
    public static DemoText OfAnalyserB(BenchSession session)
    {
        var text = new DemoText("\r\n").Line("Position;Sample;Extract;Mass (g);Made up to (mL);Dilution;Glucose (mmol/L);Total glucose (mmol/L);Run;Date;Time;By");
        var run = RunOf("B", session);
        foreach (var (row, position) in Rows(session, run).Select((row, index) => (row, index + 1)))
        {
            text.Cells(
                ';', DemoText.Count(position), row.Sample, row.Extract, Comma(row.Mass), row.Volume, row.Dilution,
                Comma(DemoText.Number(row.Glucose * MillimolesPerGram, 4)), Comma(DemoText.Number(row.Total * MillimolesPerGram, 4)),
                run, DemoText.Time(row.At, "dd.MM.yyyy"), DemoText.Time(row.At, "HH:mm:ss"), session.Operator(1));
        }

        return text;
    }

    public static Encoding EncodingOf(string block) => IsAnalyserA(block)
        ? new UTF8Encoding(encoderShouldEmitUTF8Identifier: true)
        : new UnicodeEncoding(bigEndian: false, byteOrderMark: true);

    private static string RunOf(string analyser, BenchSession session) =>
        string.Create(CultureInfo.InvariantCulture, $"{analyser}{session.Day:yyMMdd}-{session.Block}");

    private static IEnumerable<SugarRow> Rows(BenchSession session, string run)
    {
        var noise = DemoRandom.For(run + " controls");
        var time = session.At(13, 30);
        var extracts = session.Samples.SelectMany(sample => sample.Extracts).ToList();
        for (var index = 0; index <= extracts.Count; index++)
        {
            if (index % ControlEvery == 0)
            {
                yield return Control("CTRL-LOW", LowControl, noise, time);
                yield return Control("CTRL-HIGH", HighControl, noise, time.AddMinutes(2));
                time = time.AddMinutes(4);
            }

            if (index < extracts.Count)
            {
                yield return SampleRow(extracts[index], time);
                time = time.AddMinutes(3);
            }
        }
    }

    private static SugarRow SampleRow(DemoExtract extract, DateTime at) => new(
        extract.Label,
        DemoText.Count(extract.Number),
        DemoText.Number(extract.FreshMass, 2),
        DemoText.Number(DemoExtract.MadeUpTo, 0),
        DemoText.Count(extract.DilutionWritten),
        extract.GlucoseRead,
        extract.TotalGlucoseRead,
        at);

    private static SugarRow Control(string name, double level, DemoRandom noise, DateTime at) =>
        new(name, "", "", "", "1", level * (1 + (0.006 * noise.Normal())), 2 * level * (1 + (0.006 * noise.Normal())), at);

    private static string Comma(string number) => number.Replace('.', ',');

    private sealed record SugarRow(
        string Sample, string Extract, string Mass, string Volume, string Dilution, double Glucose, double Total, DateTime At);
}
