using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Tests.Statistics.Distributions;

public sealed class NormalTests
{
    /// <summary>mpmath 1.2.1, 50 digits.</summary>
    [Theory]
    [InlineData(0.0625, 0.475082330970752779)]
    [InlineData(0.5, 0.308537538725986896)]
    [InlineData(1, 0.158655253931457051)]
    [InlineData(1.96, 0.0249978951482204341)]
    [InlineData(3.3, 0.000483424142383777201)]
    [InlineData(5, 2.86651571879193912e-7)]
    [InlineData(7.97, 7.93371842982392833e-16)]
    [InlineData(10, 7.61985302416052607e-24)]
    [InlineData(12.5, 3.73256429887771338e-36)]
    [InlineData(20, 2.7536241186062337e-89)]
    [InlineData(37.5, 4.60535300958195484e-308)]
    public void Upper_OutToTheFarTail_AgreesToFourteenDigits(double x, double expected)
    {
        Agreement.Relative(expected, Normal.Upper(x), 1e-14);
        Agreement.Relative(expected, Normal.Cdf(-x), 1e-14);
        Agreement.Relative(x, Normal.UpperQuantile(expected), 1e-14);
        Agreement.Relative(-x, Normal.Quantile(expected), 1e-14);
    }

    [Fact]
    public void Upper_AtZeroAndInfinity_IsExact()
    {
        Agreement.Absolute(0.5, Normal.Upper(0), 1e-16);
        Assert.Equal(0, Normal.Upper(double.PositiveInfinity));
        Assert.Equal(1, Normal.Upper(double.NegativeInfinity));
        Assert.Equal(0, Normal.Quantile(0.5));
    }

    [Fact]
    public void Functions_WhenGivenNaNOrAnImpossibleProbability_Refuse()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Cdf(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Upper(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Density(double.NaN));
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => Normal.Quantile(1));
        Assert.Contains("strictly between 0 and 1; found 1", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Normal.UpperQuantile(double.NaN));
    }
}
