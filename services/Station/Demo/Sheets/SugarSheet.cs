using System.Globalization;
using System.Text;

namespace LabPipeline.Station.Demo.Sheets;

/// <summary>Runs of the two sugar analysers: the same assay, written in two dialects.</summary>
internal static class SugarSheet
{
    private const int ControlEvery = 12;
    private const double LowControl = 0.050;
    private const double HighControl = 0.500;
    /// <summary>mg/dL in one mmol/L of glucose.</summary>
    private const double MilligramsPerMillimole = 18.0156;

    private const double MillimolesPerGram = 1000 / 180.156;

    public static bool IsAnalyserA(string block) => block is "1" or "2";

    /// <summary>Analyser A: commas, decimal points, mg/dL, ISO times, UTF-8 with a byte order mark.</summary>
    public static DemoText OfAnalyserA(BenchSession session, SugarFlaw flaw)
    {
        var text = new DemoText("\r\n").Line("sample,extract,fresh_mass_g,made_up_to_ml,solvent_added_ml,dilution,glucose_mg_dl,total_glucose_mg_dl,run,measured_at,operator");
        var run = RunOf("A", session);
        foreach (var row in Rows(session, run, flaw))
        {
            text.Cells(
                ',', row.Sample, row.Extract, row.Mass, row.Volume, row.Solvent, row.Dilution,
                DemoText.Number(row.Glucose * 100, 2), DemoText.Number(row.Total * 100, 2),
                run, DemoText.Time(row.At, "yyyy-MM-ddTHH:mm:ss"), session.Operator(1));
        }

        return text;
    }

    /// <summary>Analyser B: semicolons, decimal commas, mmol/L, day.month.year, UTF-16 little endian.</summary>
    public static DemoText OfAnalyserB(BenchSession session, SugarFlaw flaw)
    {
        var text = new DemoText("\r\n").Line("Position;Sample;Extract;Mass (g);Made up to (mL);Dilution;Glucose (mmol/L);Total glucose (mmol/L);Run;Date;Time;By");
        var run = RunOf("B", session);
        foreach (var (row, position) in Rows(session, run, flaw).Select((row, index) => (row, index + 1)))
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

    private static IEnumerable<SugarRow> Rows(BenchSession session, string run, SugarFlaw flaw)
    {
        var noise = DemoRandom.For(run + " controls");
        var time = session.At(13, 30);
        var extracts = session.Samples.SelectMany(sample => sample.Extracts).ToList();
        for (var index = 0; index <= extracts.Count; index++)
        {
            if (index % ControlEvery == 0)
            {
                yield return Flawed(Control("CTRL-LOW", LowControl, noise, time), flaw, index);
                yield return Flawed(Control("CTRL-HIGH", HighControl, noise, time.AddMinutes(2)), flaw, index);
                time = time.AddMinutes(4);
            }

            if (index < extracts.Count)
            {
                yield return Flawed(SampleRow(extracts[index], time), flaw, index);
                time = time.AddMinutes(3);
            }
        }
    }

    /// <summary>Drift: nothing in the first half of the run, 5 % in the second, 12 % at its end.</summary>
    private static SugarRow Flawed(SugarRow row, SugarFlaw flaw, int index) => flaw switch
    {
        SugarFlaw.Drift when index > ControlEvery => Scaled(row, index < 2 * ControlEvery ? 1.05 : 1.12),
        SugarFlaw.WornEnzyme => row with { Total = row.Glucose + (0.75 * (row.Total - row.Glucose)) },
        SugarFlaw.OtherUnit => Scaled(row, 1 / MilligramsPerMillimole),
        _ => row,
    };

    private static SugarRow Scaled(SugarRow row, double factor) => row with { Glucose = row.Glucose * factor, Total = row.Total * factor };

    private static SugarRow SampleRow(DemoExtract extract, DateTime at) => new(
        extract.Label,
        DemoText.Count(extract.Number),
        DemoText.Number(extract.FreshMass, 2),
        DemoText.Number(DemoExtract.MadeUpTo, 0),
        extract.SolventWritten ? DemoText.Number(DemoExtract.MadeUpTo, 0) : "",
        DemoText.Count(extract.DilutionWritten),
        extract.GlucoseRead,
        extract.TotalGlucoseRead,
        at);

    private static SugarRow Control(string name, double level, DemoRandom noise, DateTime at) =>
        new(name, "", "", "", "", "1", level * (1 + (0.006 * noise.Normal())), 2 * level * (1 + (0.006 * noise.Normal())), at);

    private static string Comma(string number) => number.Replace('.', ',');

    private sealed record SugarRow(
        string Sample, string Extract, string Mass, string Volume, string Solvent, string Dilution, double Glucose, double Total, DateTime At);
}
