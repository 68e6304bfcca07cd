using LabPipeline.Reporting.Report;
using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Keeping;

namespace LabPipeline.Reporting.Tests.Season;

/// <summary>Worked by hand: straight lines between means, infinite degrees of freedom, so the band is 1.959964 standard errors each way.</summary>
public sealed class KeepingTimesTests
{
    private const double Z = 1.959963984540054;

    [Fact]
    public void Crossing_BetweenTwoPulls_IsInterpolatedWithItsInterval()
    {
        var time = Of([(0, 1, 0.5 / Z), (100, 3, 0.5 / Z)], 2);

        Assert.Equal(KeepingState.Crossed, time.State);
        Assert.Equal(50, time.Day!.Value, 9);
        Assert.Equal(25, time.Earliest!.Value, 9);
        Assert.Equal(75, time.Latest!.Value, 9);
    }

    [Fact]
    public void Crossing_WhenTheMeanOnlyReachesTheLimit_HasNotHappened()
    {
        var time = Of([(0, 1, 0.1), (100, 2, 0.1)], 2);

        Assert.Equal((KeepingState.NotReached, null, null), (time.State, time.Day, time.Latest));
        Assert.Equal("> 100", KeepingText.Day(time));
        Assert.InRange(time.Earliest!.Value, 1, 99);
    }

    [Fact]
    public void Interval_WhenTheBandNeverTouchesTheLimit_IsCensoredAtTheLastPull()
    {
        var time = Of([(0, 1, 0.1), (100, 1.1, 0.1)], 5);

        Assert.Equal("> 100", KeepingText.Interval(time));
    }

    [Fact]
    public void Crossing_WhenTheFirstPullIsOut_IsCensoredThere()
    {
        var time = Of([(30, 6, 0.1), (100, 7, 0.1)], 5);

        Assert.Equal((KeepingState.OutFromTheStart, "≤ 30"), (time.State, KeepingText.Day(time)));
        Assert.Null(time.Earliest);
    }

    [Fact]
    public void Crossing_WhenTheMeanComesBack_SaysSo()
    {
        var time = Of([(0, 1, 0.1), (50, 3, 0.1), (100, 1, 0.1)], 2);

        Assert.True(time.CameBack);
        Assert.Equal(25, time.Day!.Value, 9);
        Assert.EndsWith("*", KeepingText.Day(time), StringComparison.Ordinal);
    }

    [Fact]
    public void Crossing_WhereLowIsBad_LooksBelowTheLimit()
    {
        var trajectory = new Trajectory("KT-1", [Point(0, 60, 0.01), Point(100, 50, 0.01)]);

        var time = KeepingTimes.Of([trajectory], 55, highIsBad: false, 0.05).Single();

        Assert.Equal(50, time.Day!.Value, 9);
    }

    private static KeepingTime Of((int Day, double Mean, double Error)[] points, double limit) =>
        KeepingTimes.Of([new Trajectory("KT-1", [.. points.Select(point => Point(point.Day, point.Mean, point.Error))])], limit, highIsBad: true, 0.05).Single();

    private static TrajectoryPoint Point(int day, double mean, double error) => new(1, day, mean, error, double.PositiveInfinity);
}
