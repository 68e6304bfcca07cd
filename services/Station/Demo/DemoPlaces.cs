using System.Globalization;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Station.Demo;

/// <summary>Names the places of the scenario as people and alerts name them: barcodes, files, runs, pulls with their plots.</summary>
internal sealed class DemoPlaces(TrialPlan plan, IReadOnlyList<BenchSession> sessions)
{
    /// <summary>A block at a pull, by its plots.</summary>
    public string Plots((int Pull, string Block) at) => string.Create(
        CultureInfo.InvariantCulture, $"Pull {at.Pull}, {string.Join(", ", plan.Plots.Where(plot => plot.Block == at.Block).Select(plot => plot.Code))}");

    /// <summary>A run, session or batch: the letters of the instrument, the day, the block.</summary>
    public string Run((int Pull, string Block) at, string instrument) =>
        string.Create(CultureInfo.InvariantCulture, $"{instrument}{Find(at.Pull, at.Block).Day:yyMMdd}-{at.Block}");

    public string Sample((int Pull, string Block, int Place) at) => Find(at.Pull, at.Block).Samples[at.Place].Barcode;

    /// <summary>The plot of a sample at the pull after it.</summary>
    public string NextPull((int Pull, string Block, int Place) at) =>
        string.Create(CultureInfo.InvariantCulture, $"Pull {at.Pull + 1}, {Find(at.Pull, at.Block).Samples[at.Place].Planned.Plot.Code}");

    public string Diluted((int Pull, string Block) at) => Find(at.Pull, at.Block).Samples.First(sample => sample.Extracts[0].Dilution > 1).Barcode;

    public string File((int Pull, string Block) at, string instrument, string ending) =>
        string.Create(CultureInfo.InvariantCulture, $"{instrument}_{Find(at.Pull, at.Block).Day:yyyy-MM-dd}_block{at.Block}{ending}");

    public string File((int Pull, string Block, int Place) at, string instrument, string ending) => File((at.Pull, at.Block), instrument, ending);

    private BenchSession Find(int pull, string block) => sessions.Single(session => session.Pull == pull && session.Block == block);
}
