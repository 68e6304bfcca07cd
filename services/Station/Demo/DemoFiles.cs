using System.Globalization;
using System.Text;
using LabPipeline.Station.Demo.Sheets;

namespace LabPipeline.Station.Demo;

/// <summary>The files instruments and people write about a session.</summary>
internal sealed class DemoFiles(TimeZoneInfo zone, bool clean)
{
    /// <summary>The session whose chips were read on the spare meter.</summary>
    private static readonly (int Pull, string Block) OnSpareMeter = (5, "1");

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>All files of a session as they should be.</summary>
    public IEnumerable<DemoFile> Of(BenchSession session) =>
    [
        Sugars(session), Weighing(session), PeelMasses(session), PeelScores(session), FryBatches(session), Colours(session), Chips(session),
    ];

    public DemoFile Sugars(BenchSession session) => SugarSheet.IsAnalyserA(session.Block)
        ? File(session, "sugar", "analyser-a", ".csv", session.At(15, 40), SugarSheet.OfAnalyserA(InOrder(session, FlawsOf(session).SugarOrder), FlawsOf(session).Sugar).Bytes(SugarSheet.EncodingOf(session.Block)))
        : File(session, "sugar", "analyser-b", ".txt", session.At(15, 45), SugarSheet.OfAnalyserB(InOrder(session, FlawsOf(session).SugarOrder), FlawsOf(session).Sugar).Bytes(SugarSheet.EncodingOf(session.Block)));

    public DemoFile Weighing(BenchSession session) =>
        File(session, "balance", "weighing", ".txt", session.At(9, 30), WeighingSheet.Of(session, FlawsOf(session).Sling).Bytes(Encoding.Latin1));

    public DemoFile PeelMasses(BenchSession session) =>
        File(session, "balance", "peeling", ".tsv", session.At(10, 5), PeelingSheet.Masses(session).Bytes(Utf8));

    public DemoFile PeelScores(BenchSession session) =>
        File(session, "bench", "peel-score", ".csv", session.At(10, 10), PeelingSheet.Scores(session).Bytes(Utf8));

    public DemoFile FryBatches(BenchSession session) =>
        File(session, "bench", "fry-log", ".csv", session.At(11, 55), FryLog.Of(session, FlawsOf(session).ColdBatch).Bytes(Utf8));

    public DemoFile Colours(BenchSession session) => (session.Pull, session.Block) == OnSpareMeter
        ? File(session, "colour", "colour-2", ".txt", session.At(12, 40), ColourSheet.OfMeter2(InOrder(session, FlawsOf(session).ColourOrder), FlawsOf(session).TileShift).Bytes(Utf8))
        : ColoursSoFar(session, session.Samples.Count, session.At(12, 40));

    /// <summary>The run of meter 1 exported when <paramref name="samples"/> samples were read.</summary>
    public DemoFile ColoursSoFar(BenchSession session, int samples, DateTime writtenAt) =>
        File(session, "colour", "colour-1", ".csv", writtenAt, ColourSheet.OfMeter1(InOrder(session, FlawsOf(session).ColourOrder), samples, FlawsOf(session).TileShift).Bytes(Utf8));

    public DemoFile Chips(BenchSession session) =>
        File(session, "bench", "chips", ".csv", session.At(13, 25), ChipSheet.Of(session, FlawsOf(session).StemEndShift).Bytes(Utf8));

    private DemoFlaws FlawsOf(BenchSession session) => clean ? DemoFlaws.None : DemoFlaws.Of(session);

    private static BenchSession InOrder(BenchSession session, Func<IReadOnlyList<DemoSample>, IReadOnlyList<DemoSample>> order) =>
        session with { Samples = order(session.Samples) };

    private DemoFile File(BenchSession session, string kind, string instrument, string extension, DateTime writtenAt, byte[] bytes) => new(
        kind,
        string.Create(CultureInfo.InvariantCulture, $"{instrument}_{session.Day:yyyy-MM-dd}_block{session.Block}{extension}"),
        bytes,
        new DateTimeOffset(writtenAt, zone.GetUtcOffset(writtenAt)));
}
