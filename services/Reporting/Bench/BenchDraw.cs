using System.Globalization;
using LabPipeline.Science.Randomisation;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Bench;

/// <summary>Draws the order in which a pull is analysed or fried: at random within each block, block after block.</summary>
/// <remarks>
/// One block a day, or a part of a day: then day, oil and drift of an analyser fall into blocks and not into treatments. Each block has a random
/// stream of its own, named after trial, pull, kind and block.
/// </remarks>
public static class BenchDraw
{
    public static BenchOrder Of(BenchPull pull, string kind, long seed, DateTimeOffset now, string who)
    {
        ArgumentNullException.ThrowIfNull(pull);
        var drawn = pull.Samples.GroupBy(sample => sample.Block).SelectMany(block => Pcg32.Named(seed, NameOf(pull, kind, block.Key)).Shuffle(block));
        return new BenchOrder
        {
            TrialCode = pull.TrialCode,
            PullNo = pull.PullNo,
            Kind = kind,
            Seed = seed,
            MadeAt = now,
            MadeBy = who,
            Places = [.. drawn.Select((sample, index) => new BenchPlace { Position = index + 1, Barcode = sample.Barcode, Block = sample.Block, PlotCode = sample.PlotCode })],
        };
    }

    /// <summary>The seed when none is stated: the due day written as a number, so that it is known before anyone could choose.</summary>
    public static long UsualSeed(BenchPull pull)
    {
        ArgumentNullException.ThrowIfNull(pull);
        return (pull.DueOn.Year * 10_000) + (pull.DueOn.Month * 100) + pull.DueOn.Day;
    }

    private static string NameOf(BenchPull pull, string kind, string block) =>
        string.Create(CultureInfo.InvariantCulture, $"{pull.TrialCode}/pull {pull.PullNo}/{kind}/block {block}");
}
