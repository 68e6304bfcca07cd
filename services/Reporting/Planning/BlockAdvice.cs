using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Tests;

namespace LabPipeline.Reporting.Planning;

/// <summary>How many blocks the variance of one pull asks for.</summary>
/// <param name="Variance">What it is taken from.</param>
/// <param name="Blocks">Fewest blocks for the wanted power; null when no field trial would do.</param>
/// <param name="Powers">Power of a planned comparison with 3, 4, 5 and 6 blocks.</param>
public sealed record BlockAdvice(SeasonVariance Variance, int? Blocks, IReadOnlyList<(int Blocks, double Power)> Powers)
{
    private static readonly int[] Shown = [3, 4, 5, 6];

    /// <param name="variance">The error of the mean that is to be compared.</param>
    /// <param name="treatments">Treatments of the new trial, 2 or more.</param>
    /// <param name="wanted">What is to be found.</param>
    /// <param name="power">Wanted probability of finding it, above 0 and below 1.</param>
    /// <param name="alpha">Level of the test, above 0 and below 1.</param>
    public static BlockAdvice Of(SeasonVariance variance, int treatments, WantedDifference wanted, double power, double alpha)
    {
        ArgumentNullException.ThrowIfNull(variance);
        ArgumentNullException.ThrowIfNull(wanted);
        var plan = new RandomisedBlockPlan(treatments, variance.Variance, alpha);
        return new BlockAdvice(variance, BlocksOf(plan, wanted.OnScale, power), [.. Shown.Select(blocks => (blocks, plan.PowerOfComparison(blocks, wanted.OnScale)))]);
    }

    private static int? BlocksOf(RandomisedBlockPlan plan, double difference, double power)
    {
        try
        {
            return plan.BlocksForComparison(difference, power);
        }
        catch (NotEstimableException)
        {
            return null;
        }
    }
}
