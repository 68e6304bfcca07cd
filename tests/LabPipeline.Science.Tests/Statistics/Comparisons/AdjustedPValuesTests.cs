using FsCheck;
using FsCheck.Xunit;
using LabPipeline.Science.Statistics.Comparisons;

namespace LabPipeline.Science.Tests.Statistics.Comparisons;

public sealed class AdjustedPValuesTests
{
    /// <summary>Worked by hand from the definitions.</summary>
    [Theory]
    [InlineData(PValueAdjustment.None, new[] { 0.01, 0.04, 0.03, 0.005 })]
    [InlineData(PValueAdjustment.Bonferroni, new[] { 0.04, 0.16, 0.12, 0.02 })]
    [InlineData(PValueAdjustment.Holm, new[] { 0.03, 0.06, 0.06, 0.02 })]
    [InlineData(PValueAdjustment.BenjaminiHochberg, new[] { 0.02, 0.04, 0.04, 0.02 })]
    public void Of_OnFourValues_AgreesWithHandWork(PValueAdjustment adjustment, double[] expected)
    {
        var found = AdjustedPValues.Of([0.01, 0.04, 0.03, 0.005], adjustment);
        foreach (var (wanted, p) in expected.Zip(found))
        {
            Agreement.Relative(wanted, p, 1e-14);
        }
    }

    /// <summary>The fifteen p values of Benjamini and Hochberg 1995, section 4 (from memory): Bonferroni claims three, their procedure four.</summary>
    [Fact]
    public void Of_OnThePublishedExample_ClaimsAsManyAsPublished()
    {
        double[] p = [0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.3240, 0.4262, 0.5719, 0.6528, 0.7590, 1.0];
        Assert.Equal(3, AdjustedPValues.Of(p, PValueAdjustment.Bonferroni).Count(value => value <= 0.05));
        Assert.Equal(4, AdjustedPValues.Of(p, PValueAdjustment.BenjaminiHochberg).Count(value => value <= 0.05));
    }

    [Property(MaxTest = 200)]
    public void Of_ForAnyValues_OrdersTheProcedures(byte[] raw)
    {
        if (raw.Length == 0)
        {
            return;
        }

        double[] p = [.. raw.Select(value => value / 255.0)];
        var bonferroni = AdjustedPValues.Of(p, PValueAdjustment.Bonferroni);
        var holm = AdjustedPValues.Of(p, PValueAdjustment.Holm);
        var rate = AdjustedPValues.Of(p, PValueAdjustment.BenjaminiHochberg);
        for (var i = 0; i < p.Length; i++)
        {
            Assert.True(p[i] <= rate[i] + 1e-15 && rate[i] <= holm[i] + 1e-15 && holm[i] <= bonferroni[i] && bonferroni[i] <= 1);
            for (var j = 0; j < p.Length; j++)
            {
                Assert.True(p[i] > p[j] || (holm[i] <= holm[j] && rate[i] <= rate[j]));
            }
        }
    }

    [Fact]
    public void Of_OnBadInput_Refuses()
    {
        Assert.Throws<ArgumentException>(() => AdjustedPValues.Of([], PValueAdjustment.Holm));
        Assert.Throws<ArgumentException>(() => AdjustedPValues.Of([0.1, double.NaN], PValueAdjustment.Holm));
        Assert.Throws<ArgumentException>(() => AdjustedPValues.Of([0.1, 1.1], PValueAdjustment.Holm));
        Assert.Throws<ArgumentException>(() => AdjustedPValues.Of([-0.1, 0.5], PValueAdjustment.None));
    }
}
