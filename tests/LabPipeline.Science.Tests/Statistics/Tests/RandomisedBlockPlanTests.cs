using FsCheck;
using FsCheck.Xunit;
using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Science.Statistics.Tests;

namespace LabPipeline.Science.Tests.Statistics.Tests;

public sealed class RandomisedBlockPlanTests
{
    [Fact]
    public void Power_OfAComparison_AgreesWithDirectIntegration()
    {
        // 6 treatments, 4 blocks, error variance 110558 as in the seed rate trial, true difference 600.
        var plan = new RandomisedBlockPlan(6, 110558, 0.05);
        var shift = 600 / Math.Sqrt(2 * 110558 / 4.0);
        var expected = 1 - NoncentralTBetween(StudentT.UpperQuantile(0.025, 15), 15, shift);
        Agreement.Absolute(expected, plan.PowerOfComparison(4, 600), 1e-9);
        Agreement.Absolute(expected, plan.PowerOfComparison(4, -600), 1e-9);
    }

    /// <summary>With many blocks the F tends to chi-squared and the power to Φ(δ - 1.96): a check from first principles.</summary>
    [Fact]
    public void BlocksForComparison_ForASmallDifference_NearsTheNormalFormula()
    {
        var plan = new RandomisedBlockPlan(10, 1, 0.05);
        var blocks = plan.BlocksForComparison(0.4, 0.8);
        var normal = 2 * Math.Pow((Normal.UpperQuantile(0.025) + Normal.UpperQuantile(0.2)) / 0.4, 2);
        Assert.InRange(blocks, (int)normal, (int)normal + 2);
    }

    [Property(MaxTest = 60)]
    public void Blocks_AreTheFewestThatReachThePower(PositiveInt rawTreatments, PositiveInt rawDifference)
    {
        var plan = new RandomisedBlockPlan(2 + (rawTreatments.Get % 12), 1, 0.05);
        var difference = 0.4 + (rawDifference.Get % 30 / 10.0);
        foreach (var (blocks, power) in new (int, Func<int, double>)[]
        {
            (plan.BlocksForComparison(difference, 0.8), count => plan.PowerOfComparison(count, difference)),
            (plan.BlocksForOverallF(difference, 0.8), count => plan.PowerOfOverallF(count, difference)),
        })
        {
            Assert.True(power(blocks) >= 0.8);
            Assert.True(blocks == 2 || power(blocks - 1) < 0.8);
        }
    }

    [Fact]
    public void Blocks_WhenTheDifferenceIsHopeless_SaysSo()
    {
        var error = Assert.Throws<NotEstimableException>(() => new RandomisedBlockPlan(4, 100, 0.05).BlocksForComparison(0.1, 0.8));
        Assert.Contains("even 1000 blocks do not give a power of 0.8", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_OutsideItsRange_Refuses()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomisedBlockPlan(1, 1, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomisedBlockPlan(3, 0, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomisedBlockPlan(3, double.NaN, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RandomisedBlockPlan(3, 1, 1));
        var plan = new RandomisedBlockPlan(3, 1, 0.05);
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.PowerOfComparison(1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.PowerOfComparison(4, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.PowerOfOverallF(4, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => plan.BlocksForOverallF(1, 1));
    }

    /// <summary>P(-t ≤ T' ≤ t) for noncentral T' by Simpson's rule over the standard deviation estimate: no series involved.</summary>
    private static double NoncentralTBetween(double t, double df, double shift)
    {
        const int Steps = 4000;
        var constant = Math.Log(2) + (df / 2 * Math.Log(df / 2)) - SpecialFunctions.LogGamma(df / 2);
        var sum = 0.0;
        for (var step = 1; step < Steps; step++)
        {
            var s = 4.0 * step / Steps;
            var density = Math.Exp(constant + ((df - 1) * Math.Log(s)) - (df * s * s / 2));
            sum += (step % 2 == 1 ? 4 : 2) * density * (Normal.Cdf((t * s) - shift) - Normal.Cdf((-t * s) - shift));
        }

        return sum * 4.0 / Steps / 3;
    }
}
