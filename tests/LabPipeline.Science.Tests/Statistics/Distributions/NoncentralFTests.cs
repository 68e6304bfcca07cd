using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Tests.Statistics.Distributions;

public sealed class NoncentralFTests
{
    /// <summary>scipy 1.10.1.</summary>
    [Theory]
    [InlineData(3.0, 3, 16, 5.0, 0.6069308796988568)]
    [InlineData(4.0, 1, 98, 2.25, 0.6876339806767203)]
    [InlineData(2.5, 5, 15, 12.0, 0.3165722313728496)]
    [InlineData(6.0, 4, 6, 100.0, 0.0013458718378229137)]
    [InlineData(1.0, 8, 120, 0.5, 0.5141633530833583)]
    public void Cdf_AgreesWithAnotherProgram(double f, double df1, double df2, double noncentrality, double expected)
    {
        Agreement.Relative(expected, NoncentralF.Cdf(f, df1, df2, noncentrality), 1e-9);
        Agreement.Relative(1 - expected, NoncentralF.Upper(f, df1, df2, noncentrality), 1e-9);
    }

    [Fact]
    public void Upper_AtTheCriticalValue_IsThePublishedPower()
    {
        // R manual, power.anova.test(groups = 4, n = 5, between.var = 1, within.var = 3): power 0.3535594 (seen); λ = 3 × 5 × 1/3.
        Agreement.Absolute(0.3535594, NoncentralF.Upper(FDistribution.UpperQuantile(0.05, 3, 16), 3, 16, 5), 5e-8);
        // Published exercise solution, two samples of 50, d = 0.3: power 0.3178022 (seen); λ = 50 × 0.3² / 2.
        Agreement.Absolute(0.3178022, NoncentralF.Upper(FDistribution.UpperQuantile(0.05, 1, 98), 1, 98, 2.25), 5e-7);
    }

    [Fact]
    public void Upper_WithoutNoncentrality_IsTheOrdinaryF()
    {
        Agreement.Relative(FDistribution.Upper(3.1, 4, 20), NoncentralF.Upper(3.1, 4, 20, 0), 1e-14);
        Assert.Equal(1, NoncentralF.Upper(0, 4, 20, 3));
        Assert.Equal(1, NoncentralF.Cdf(double.PositiveInfinity, 4, 20, 3));
    }

    [Fact]
    public void Tails_ForLargeNoncentrality_AddToOne() =>
        Agreement.Absolute(1, NoncentralF.Upper(2500, 4, 50, 1e4) + NoncentralF.Cdf(2500, 4, 50, 1e4), 1e-11);

    [Fact]
    public void Functions_OutsideTheirRange_Refuse()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralF.Cdf(double.NaN, 2, 5, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralF.Cdf(1, 0, 5, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralF.Cdf(1, 2, double.PositiveInfinity, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralF.Cdf(1, 2, 5, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralF.Cdf(1, 2, 5, double.NaN));
    }
}
