using System.Globalization;

namespace LabPipeline.Station.Demo;

/// <summary>Names the places of the scenario as people find them: barcodes, files, pulls.</summary>
internal sealed class DemoPlaces(IReadOnlyList<BenchSession> sessions)
{
    public static string Session((int Pull, string Block) at) => string.Create(CultureInfo.InvariantCulture, $"pull {at.Pull}, block {at.Block}");

    public string Sample((int Pull, string Block, int Place) at) => Find(at.Pull, at.Block).Samples[at.Place].Barcode;

    public string Diluted((int Pull, string Block) at) => Find(at.Pull, at.Block).Samples.First(sample => sample.Extracts[0].Dilution > 1).Barcode;

    public string File((int Pull, string Block) at, string instrument, string ending) =>
        string.Create(CultureInfo.InvariantCulture, $"{instrument}_{Find(at.Pull, at.Block).Day:yyyy-MM-dd}_block{at.Block}{ending}");

    public string File((int Pull, string Block, int Place) at, string instrument, string ending) => File((at.Pull, at.Block), instrument, ending);

    private BenchSession Find(int pull, string block) => sessions.Single(session => session.Pull == pull && session.Block == block);
}
