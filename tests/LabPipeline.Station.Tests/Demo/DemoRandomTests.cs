using LabPipeline.Station.Demo;

namespace LabPipeline.Station.Tests.Demo;

public sealed class DemoRandomTests
{
    // Source: first values of SplitMix64 for seed 1234567 as published with its reference implementation (from memory).
    [Fact]
    public void Next_ForTheReferenceSeed_GivesThePublishedSeries()
    {
        var random = new DemoRandom(1234567);

        Assert.Equal(
            [6457827717110365317UL, 3203168211198807973UL, 9817491932198370423UL, 4593380528125082431UL, 16408922859458223821UL],
            Enumerable.Range(0, 5).Select(_ => random.Next()));
    }

    // Source: a normal deviate cut at 2.2 standard deviations has mean 0 and variance 1 - 2 x 2.2 phi(2.2) / (2 Phi(2.2) - 1) = 0.8395 (textbook
    // formula of the truncated normal distribution); twelve uniforms come close to it. 20,000 draws: standard error of the mean 0.0065.
    [Fact]
    public void Normal_DrawnOften_HasTheMomentsOfATruncatedNormal()
    {
        var random = DemoRandom.For("moments");
        var drawn = Enumerable.Range(0, 20_000).Select(_ => random.Normal()).ToList();

        Assert.InRange(drawn.Average(), -0.026, 0.026);
        Assert.InRange(drawn.Average(value => value * value), 0.80, 0.88);
        Assert.All(drawn, value => Assert.InRange(value, -2.2, 2.2));
    }

    [Fact]
    public void For_AnotherName_GivesAnotherStream()
    {
        Assert.Equal(DemoRandom.For("plot 101").Next(), DemoRandom.For("plot 101").Next());
        Assert.NotEqual(DemoRandom.For("plot 101").Next(), DemoRandom.For("plot 102").Next());
    }
}
