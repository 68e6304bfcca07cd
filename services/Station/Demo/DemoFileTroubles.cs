using System.Globalization;
using System.Text;

namespace LabPipeline.Station.Demo;

/// <summary>What goes wrong with files rather than on the bench: copies, re-exports, cut and unreadable ones.</summary>
/// <remarks>Files that must be replaced keep their name; <see cref="Corrections"/> holds what the laboratory would drop to put it right.</remarks>
internal sealed class DemoFileTroubles(DemoFiles files)
{
    public static readonly (int Pull, string Block) CopiedColour = (1, "3");

    public static readonly (int Pull, string Block) ColourExportedEarly = (2, "2");

    public static readonly (int Pull, string Block) WrongBarcode = (3, "1");

    public static readonly (int Pull, string Block) EditedSugars = (6, "1");

    public static readonly (int Pull, string Block) DecimalCommas = (7, "1");

    public static readonly (int Pull, string Block) HalfWritten = (8, "2");

    public const int EditedPlace = 5;

    private const int WrongPlace = 2;
    private const int SamplesExportedEarly = 8;

    private readonly List<DemoFile> _corrections = [];

    public IReadOnlyList<DemoFile> Corrections => _corrections;

    /// <summary>The files of a session as they arrive.</summary>
    public IEnumerable<DemoFile> Of(BenchSession session)
    {
        var at = (session.Pull, session.Block);
        var own = files.Of(session);
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
            : own;
    }

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
