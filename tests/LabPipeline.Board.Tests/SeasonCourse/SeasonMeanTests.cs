using LabPipeline.Board.Season;

namespace LabPipeline.Board.Tests.SeasonCourse;

public sealed class SeasonMeanTests
{
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, s = sqrt(32 / 7); the standard error is s / sqrt(8), by hand.
    [Fact]
    public void Mean_OfPlots_HasTheErrorOfAMean()
    {
        var mean = Assert.Single(SeasonMean.Of(new[] { 2m, 4, 4, 4, 5, 5, 7, 9 }.Select(value => Point("NT-1", 1, value))));

        Assert.Equal((5m, 8, 0, 100), (mean.Mean, mean.Plots, mean.BelowLimit, mean.Days));
        Assert.Equal(Math.Sqrt(32.0 / 7 / 8), mean.StandardError!.Value, 12);
    }

    [Fact]
    public void Mean_OfOnePlot_HasNoError() => Assert.Null(Assert.Single(SeasonMean.Of([Point("NT-1", 1, 2m)])).StandardError);

    [Fact]
    public void Means_OfClonesAndPulls_AreKeptApart() =>
        Assert.Equal(3, SeasonMean.Of([Point("NT-1", 1, 2m), Point("NT-1", 2, 2m), Point("NT-2", 1, 2m)]).Count);

    private static SeasonPoint Point(string clone, int pull, decimal value) => new()
    {
        CloneName = clone,
        Treatment = "nitrogen 0",
        PullNo = pull,
        HarvestedOn = new DateOnly(2025, 9, 1),
        DueOn = new DateOnly(2025, 9, 1).AddDays(100),
        Value = value,
    };
}
