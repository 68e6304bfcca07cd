using LabPipeline.Science.Statistics;

namespace LabPipeline.Science.Tests.Statistics;

public sealed class MomentsTests
{
    /// <summary>4, 7, 13, 16 has mean 10 and variance 30; any shift must leave the variance alone.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1e9)]
    [InlineData(-1e15)]
    public void Of_WhenTheMeanIsHuge_KeepsTheVariance(double shift)
    {
        var moments = Moments.Of([shift + 4, shift + 7, shift + 13, shift + 16]);

        Assert.Equal(30, moments.Variance);
        Assert.Equal(shift + 10, moments.Mean);
        Assert.Equal(4, moments.Count);
    }

    [Fact]
    public void Of_WhenAllValuesAreEqual_HasExactlyNoSumOfSquares() =>
        Assert.Equal(0, Moments.Of([0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1]).SumOfSquares);

    [Fact]
    public void Variance_OfOneValue_IsNotEstimable()
    {
        var error = Assert.Throws<NotEstimableException>(() => Moments.Of([3.5]).Variance);
        Assert.Equal("The variance is not estimable: there is only 1 value.", error.Message);
        Assert.Equal("The variance", error.What);
        Assert.Equal("there is only 1 value", error.Why);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Of_WhenAValueIsNotFinite_SaysWhichOne(double bad)
    {
        var error = Assert.Throws<ArgumentException>(() => Moments.Of([1, 2, bad]));
        Assert.Contains("value 3 of 3", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Moments.Of([]));
    }
}
