using System.Diagnostics;
using System.Globalization;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Benchmarks;

/// <summary>Every table of a season of 4 clones x 3 rates x 4 blocks x 8 pulls, warm, as randomised blocks and as a split-plot.</summary>
internal static class AnalysisTiming
{
    // The runtime compiles a method for speed only after some tens of calls.
    private const int WarmingRuns = 10;
    private const int Runs = 20;
    private const int TargetMilliseconds = 200;

    // Clone by rate by pull has 96 means and 4560 pairs; a report tests its trend and prints no letters.
    private const int LargestLettered = 12;

    private static readonly string[] Clones = ["PX1", "PX2", "PX3", "PX4"];
    private static readonly string[] Rates = ["low", "mid", "high"];
    private static readonly PullDay[] Pulls = [.. new[] { 0, 21, 49, 77, 112, 140, 182, 224 }.Select((day, index) => new PullDay($"pull {index + 1}", day))];

    public static int Run()
    {
        var slow = 0;
        foreach (var layout in new[] { TrialLayout.RandomisedBlocks, TrialLayout.SplitPlot })
        {
            var (first, median, slowest, processor) = Time(layout);
            slow += median > TargetMilliseconds ? 1 : 0;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{layout}: first {first:0} ms, warm median of {Runs} {median:0} ms, slowest {slowest:0} ms, processor {processor:0} ms a run, target {TargetMilliseconds} ms"));
        }

        return slow == 0 ? 0 : 1;
    }

    /// <summary>One season as randomised blocks.</summary>
    /// <returns>How many milliseconds it took.</returns>
    public static double OnceForBenchmark() => Once(Design(TrialLayout.RandomisedBlocks), Rows());

    /// <summary>Processor time stands beside the clock: on a busy machine only it can be compared.</summary>
    private static (double First, double Median, double Slowest, double Processor) Time(TrialLayout layout)
    {
        var design = Design(layout);
        var rows = Rows();
        var first = Once(design, rows);
        for (var run = 0; run < WarmingRuns; run++)
        {
            Once(design, rows);
        }

        var before = Environment.CpuUsage.TotalTime;
        var times = Enumerable.Range(0, Runs).Select(_ => Once(design, rows)).Order().ToList();
        var processor = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds / Runs;
        return (first, (times[(Runs / 2) - 1] + times[Runs / 2]) / 2, times[^1], processor);
    }

    private static double Once(FieldTrialDesign design, PlotMean[] rows)
    {
        var watch = Stopwatch.StartNew();
        var result = FieldTrialAnalysis.Analyse(design, rows);
        foreach (var means in result.Pulls.SelectMany(pull => pull.Means).Concat(result.Repeated!.Means).Where(means => means.Cells.Count <= LargestLettered))
        {
            var compared = means.ForComparison();
            CompactLetters.Of(compared, AllPairs.Tukey(compared, 0.05), LetterOrder.HighestFirst);
        }

        return watch.Elapsed.TotalMilliseconds;
    }

    private static FieldTrialDesign Design(TrialLayout layout) => new()
    {
        Layout = layout,
        Factors = [new TreatmentFactor("clone", Clones), new TreatmentFactor("rate", Rates)],
        MainPlotFactors = layout == TrialLayout.SplitPlot ? ["clone"] : [],
        Pulls = Pulls,
    };

    /// <summary>Invented: lasting effects of blocks, main plots and plots, a drift over the pulls that differs between clones, and noise.</summary>
    private static PlotMean[] Rows()
    {
        var random = new Random(20261);
        var rows = new List<PlotMean>();
        for (var block = 1; block <= 4; block++)
        {
            foreach (var (clone, cloneIndex) in Clones.Select((name, index) => (name, index)))
            {
                var mainPlot = block + (2 * random.NextDouble());
                foreach (var (rate, rateIndex) in Rates.Select((name, index) => (name, index)))
                {
                    var plot = 20 + mainPlot + cloneIndex + (0.5 * rateIndex) + (1.5 * random.NextDouble());
                    rows.AddRange(Pulls.Select((pull, index) => new PlotMean($"B{block}", $"{block}-{clone}-{rate}",
                        new Dictionary<string, string> { ["clone"] = clone, ["rate"] = rate },
                        plot + (0.4 * index) + (0.1 * index * cloneIndex) + random.NextDouble(), $"{block}-{clone}", pull.Name)));
                }
            }
        }

        return [.. rows];
    }
}
