using System.Globalization;
using System.Text;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>What goes wrong with files rather than on the bench: copies, re-exports, cut and unreadable ones.</summary>
/// <remarks>Files that must be replaced keep their name; <see cref="Corrections"/> holds what the laboratory would drop to put it right.</remarks>
internal sealed class DemoFileTroubles(DemoFiles files, TrialPlan plan, bool clean)
{
    public static readonly (int Pull, string Block) CopiedColour = (1, "3");

    public static readonly (int Pull, string Block) ColourExportedEarly = (2, "2");

    public static readonly (int Pull, string Block) WrongBarcode = (3, "1");

    public static readonly (int Pull, string Block) EditedSugars = (6, "1");

    public static readonly (int Pull, string Block) DecimalCommas = (7, "1");

    public static readonly (int Pull, string Block) HalfWritten = (8, "2");

    public static readonly (int Pull, string Block) Spreadsheet = (8, "4");
    public static readonly (int Pull, string Block) Placeholder = (4, "4");
    public static readonly (int Pull, string Block) NoMass = (5, "2");
    public static readonly (int Pull, string Block) NeverSent = (3, "2");
    public static readonly (int Pull, string Block) SlowClock = (6, "3");
    public static readonly (int Pull, string Block) DayFirst = (3, "3");

    /// <summary>Days by which the balance's clock was behind.</summary>
    private const int ClockBehind = 4;

    public const int EditedPlace = 5;

    private const int LineWithoutMass = 8;
    private const int WrongPlace = 2;
    private const int SamplesExportedEarly = 8;

    private readonly List<DemoFile> _corrections = [];

    public IReadOnlyList<DemoFile> Corrections => _corrections;

    /// <summary>The files of a session as they arrive.</summary>
    public IEnumerable<DemoFile> Of(BenchSession session)
    {
        var at = (session.Pull, session.Block);
        var own = files.Of(session);
        if (clean)
        {
            return own;
        }

        if (at == CopiedColour)
        {
            return [.. own, Renamed(files.Colours(session), "_copy")];
        }

        if (at == ColourExportedEarly)
        {
            return [.. Without(own, files.Colours(session)), files.ColoursSoFar(session, SamplesExportedEarly, session.At(12, 5)), Renamed(files.Colours(session), "_all")];
        }

        if (at == EditedSugars)
        {
            return [.. own, Renamed(files.Sugars(Edited(session)), "_2")];
        }

        return at == WrongBarcode ? Replaced(own, files.PeelScores(session), text => Misread(text, session.Samples[WrongPlace].Barcode))
            : at == DecimalCommas ? Replaced(own, files.PeelMasses(session), text => text.Replace('.', ','))
            : at == HalfWritten ? Replaced(own, files.FryBatches(session), text => text[..^30])
            : at == Spreadsheet ? Replaced(own, files.PeelScores(session), text => Reformatted(text, session.Day))
            : at == Placeholder ? Replaced(own, files.PeelMasses(session), text => Overloaded(text))
            : at == NoMass ? Replaced(own, files.Sugars(session), text => WithoutMass(text))
            : at == NeverSent ? Without(own, files.Colours(session))
            : Mislabelled(own, session);
    }

    /// <summary>Files that can be read and say something wrong about when or what was measured.</summary>
    private IEnumerable<DemoFile> Mislabelled(IEnumerable<DemoFile> own, BenchSession session)
    {
        var at = (session.Pull, session.Block);
        if (at == SlowClock)
        {
            return Spoilt(own, files.Weighing(session), Encoding.Latin1, text => text.Replace(Iso(session.Day), Iso(session.Day.AddDays(-ClockBehind)), StringComparison.Ordinal));
        }

        if (at == DayFirst)
        {
            return Spoilt(own, files.PeelMasses(session), Encoding.UTF8, text => text.Replace(Written(session.Day, "MM/dd/yyyy"), Written(session.Day, "dd/MM/yyyy"), StringComparison.Ordinal));
        }

        var (pull, block, place) = DemoMishaps.NextPull;
        return at == (pull, block)
            ? Spoilt(own, files.PeelMasses(session), Encoding.UTF8, text => text.Replace(session.Samples[place].Barcode, LabelOfNextPull(session.Samples[place]), StringComparison.Ordinal))
            : own;
    }

    /// <summary>The label of the same plot at the next pull.</summary>
    private string LabelOfNextPull(DemoSample sample) => PlanSamples.Of(plan)
        .Single(other => other.Plot.Code == sample.Planned.Plot.Code && other.Pull.Number == sample.Planned.Pull.Number + 1).Barcode.Text;

    private static IEnumerable<DemoFile> Spoilt(IEnumerable<DemoFile> own, DemoFile good, Encoding encoding, Func<string, string> spoil) =>
        [.. Without(own, good), good with { Bytes = encoding.GetBytes(spoil(encoding.GetString(good.Bytes.Span))) }];

    /// <summary>A spreadsheet saved the sheet and wrote its dates its own way.</summary>
    private static string Reformatted(string text, DateOnly day) => text.Replace(Iso(day), Written(day, "M/d/yyyy"), StringComparison.Ordinal);

    /// <summary>The last sample was on the balance while it showed overload.</summary>
    private static string Overloaded(string text)
    {
        var lines = text.Split("\r\n");
        var cells = lines[^3].Split('\t');
        cells[3] = "9999.99";
        lines[^3] = string.Join('\t', cells);
        return string.Join("\r\n", lines);
    }

    /// <summary>One extract's mass was entered as 0.</summary>
    private static string WithoutMass(string text)
    {
        var lines = text.Split("\r\n");
        var cells = lines[LineWithoutMass].Split(',');
        cells[2] = "0.00";
        lines[LineWithoutMass] = string.Join(',', cells);
        return string.Join("\r\n", lines);
    }

    private static string Iso(DateOnly day) => Written(day, "yyyy-MM-dd");

    private static string Written(DateOnly day, string format) => day.ToString(format, CultureInfo.InvariantCulture);

    private List<DemoFile> Replaced(IEnumerable<DemoFile> own, DemoFile good, Func<string, string> spoil)
    {
        _corrections.Add(good with { WrittenAt = good.WrittenAt.AddDays(1) });
        return [.. Without(own, good), good with { Bytes = Encoding.UTF8.GetBytes(spoil(Encoding.UTF8.GetString(good.Bytes.Span))) }];
    }

    private static IEnumerable<DemoFile> Without(IEnumerable<DemoFile> own, DemoFile file) => own.Where(other => other.Name != file.Name);

    private static DemoFile Renamed(DemoFile file, string suffix)
    {
        var dot = file.Name.LastIndexOf('.');
        return file with { Name = file.Name[..dot] + suffix + file.Name[dot..], WrittenAt = file.WrittenAt.AddHours(20) };
    }

    /// <summary>The session as a person who did not like one value exported it the next day.</summary>
    private static BenchSession Edited(BenchSession session)
    {
        var sample = session.Samples[EditedPlace];
        var extract = sample.Extracts[0];
        var nicer = extract with { Glucose = extract.Glucose * 0.9 };
        return session with
        {
            Samples =
            [
                .. session.Samples.Take(EditedPlace),
                sample with { Extracts = [nicer, .. sample.Extracts.Skip(1)] },
                .. session.Samples.Skip(EditedPlace + 1),
            ],
        };
    }

    /// <summary>The text with one digit of a barcode typed wrongly.</summary>
    private static string Misread(string text, string barcode)
    {
        var digit = (char)('0' + ((int.Parse(barcode[^2..^1], CultureInfo.InvariantCulture) + 3) % 10));
        return text.Replace(barcode, barcode[..^2] + digit + barcode[^1], StringComparison.Ordinal);
    }
}
