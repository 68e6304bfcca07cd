using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Designs;

/// <summary>Plot means for the field trial tests: published sets in our shape, and an invented trial with pulls.</summary>
internal static class TrialRows
{
    public static FieldTrialDesign SeedRateDesign { get; } = new()
    {
        Layout = TrialLayout.RandomisedBlocks,
        Factors = [new TreatmentFactor("rate", ["25", "50", "75", "100", "125", "150"])],
    };

    public static FieldTrialDesign OatDesign { get; } = new()
    {
        Layout = TrialLayout.SplitPlot,
        Factors = [new TreatmentFactor("variety", ["Golden.rain", "Marvellous", "Victory"]), new TreatmentFactor("nitrogen", ["0.0cwt", "0.2cwt", "0.4cwt", "0.6cwt"])],
        MainPlotFactors = ["variety"],
    };

    public static FieldTrialDesign StorageDesign(bool split = false) => new()
    {
        Layout = split ? TrialLayout.SplitPlot : TrialLayout.RandomisedBlocks,
        Factors = [new TreatmentFactor("clone", ["PX1", "PX2"]), new TreatmentFactor("rate", ["low", "mid", "high"])],
        MainPlotFactors = split ? ["clone"] : [],
        Pulls = [new PullDay("harvest", 0), new PullDay("winter", 60), new PullDay("spring", 150)],
    };

    public static PlotMean[] SeedRates() => [.. ReferenceTable.Load("G_data_gomez_seedrate.csv").Rows.Select((row, index) =>
        new PlotMean(row.Text("rep"), $"P{index}", new Dictionary<string, string> { ["rate"] = row.Text("rate") }, row.Number("yield")))];

    public static PlotMean[] Oats() => [.. ReferenceTable.Load("G_data_yates_oats.csv").Rows.Select((row, index) =>
        new PlotMean(row.Text("block"), $"P{index}", new Dictionary<string, string> { ["variety"] = row.Text("variety"), ["nitrogen"] = row.Text("nitrogen") },
            row.Number("yield"), row.Text("block") + "/" + row.Text("variety")))];

    /// <summary>4 blocks x 2 clones x 3 rates x 3 pulls, invented; block, main plot and plot effects last over the pulls.</summary>
    public static PlotMean[] Storage(int seed = 11)
    {
        var random = new Random(seed);
        var rows = new List<PlotMean>();
        foreach (var block in Enumerable.Range(1, 4))
        {
            // Larger units vary more than smaller ones here, so no variance component meets its boundary at zero.
            var mainPlots = new Dictionary<string, double> { ["PX1"] = 3 * random.NextDouble(), ["PX2"] = 3 * random.NextDouble() };
            foreach (var (clone, rate) in from clone in new[] { "PX1", "PX2" } from rate in new[] { "low", "mid", "high" } select (clone, rate))
            {
                var plot = 5 + block + mainPlots[clone] + (1.5 * random.NextDouble());
                rows.AddRange(new[] { "harvest", "winter", "spring" }.Select((pull, index) => new PlotMean($"B{block}", $"{block}-{clone}-{rate}",
                    new Dictionary<string, string> { ["clone"] = clone, ["rate"] = rate },
                    plot + (0.3 * index) + (clone == "PX2" ? 0.4 * index : 0) + random.NextDouble(), $"{block}-{clone}", pull)));
            }
        }

        return [.. rows];
    }
}
