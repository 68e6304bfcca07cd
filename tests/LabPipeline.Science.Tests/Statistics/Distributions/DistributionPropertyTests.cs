using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Tests.Statistics.Distributions;

/// <summary>Laws that hold by definition of a distribution function; no outside source is needed.</summary>
public sealed class DistributionPropertyTests
{
    private static double Within(NormalFloat raw, double low, double high)
    {
        var fraction = Math.Abs(raw.Get) % 1;
        return low * Math.Pow(high / low, fraction);
    }

    [Property(MaxTest = 300)]
    public void StudentT_QuantileOfCdf_GivesTheValueBack(NormalFloat t, NormalFloat df)
    {
        var (value, degrees) = (Within(t, 1e-4, 1e4), Within(df, 1, 1e5));
        var upper = StudentT.Upper(value, degrees);
        if (upper > 1e-290)
        {
            Agreement.Absolute(value, StudentT.UpperQuantile(upper, degrees), 1e-12 + (1e-11 * value));
        }
    }

    [Property(MaxTest = 300)]
    public void FDistribution_QuantileOfCdf_GivesTheValueBack(NormalFloat f, NormalFloat df1, NormalFloat df2)
    {
        var (value, first, second) = (Within(f, 1e-3, 1e3), Within(df1, 1, 200), Within(df2, 1, 1e4));
        var (lower, upper) = (FDistribution.Cdf(value, first, second), FDistribution.Upper(value, first, second));
        if (lower > 1e-290 && upper > 1e-290)
        {
            var back = lower < upper ? FDistribution.Quantile(lower, first, second) : FDistribution.UpperQuantile(upper, first, second);
            Agreement.Relative(value, back, 1e-10);
        }
    }

    [Property(MaxTest = 300)]
    public void ChiSquared_TailsAddToOneAndInvert(NormalFloat x, NormalFloat df)
    {
        var (value, degrees) = (Within(x, 1e-3, 1e3), Within(df, 1, 500));
        var (lower, upper) = (ChiSquared.Cdf(value, degrees), ChiSquared.Upper(value, degrees));
        Agreement.Absolute(1, lower + upper, 1e-14);
        if (lower > 1e-290 && lower < upper)
        {
            Agreement.Relative(value, ChiSquared.Quantile(lower, degrees), 1e-10);
        }
    }

    [Property(MaxTest = 300)]
    public void Cdfs_WhenTheValueGrows_NeverFall(NormalFloat x, NormalFloat step, NormalFloat df)
    {
        var degrees = Within(df, 1, 1e4);
        var low = Within(x, 1e-3, 1e2);
        var high = low * (1 + (Math.Abs(step.Get) % 1));
        Assert.True(Normal.Cdf(low) <= Normal.Cdf(high));
        Assert.True(StudentT.Cdf(low, degrees) <= StudentT.Cdf(high, degrees) + 1e-16);
        Assert.True(FDistribution.Cdf(low, 3, degrees) <= FDistribution.Cdf(high, 3, degrees) + 1e-15);
        Assert.True(ChiSquared.Cdf(low, degrees) <= ChiSquared.Cdf(high, degrees) + 1e-15);
    }

    [Property(MaxTest = 300)]
    public void Normal_QuantileOfUpper_GivesTheValueBack(NormalFloat x)
    {
        var value = Within(x, 1e-3, 37);
        Agreement.Relative(value, Normal.UpperQuantile(Normal.Upper(value)), 1e-12);
    }
}
