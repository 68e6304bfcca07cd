using LabPipeline.Notifier.Storms;

namespace LabPipeline.Notifier.Tests.Storms;

public sealed class StormThrottleTests
{
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 9, 0, 0, TimeSpan.Zero);

    private static readonly StormLimits Limits = new();

    // The numbers are this program's own policy; no source.
    [Theory]
    [InlineData(0, false, 0, StormVerdict.OneByOne)]
    [InlineData(14, false, 300, StormVerdict.OneByOne)]
    [InlineData(15, false, 0, StormVerdict.Wait)]
    [InlineData(15, false, 119, StormVerdict.Wait)]
    [InlineData(15, false, 120, StormVerdict.Digest)]
    [InlineData(15, true, 0, StormVerdict.BlockOnly)]
    [InlineData(19, true, 120, StormVerdict.BlockOnly)]
    [InlineData(20, true, 0, StormVerdict.Wait)]
    [InlineData(20, true, 120, StormVerdict.Digest)]
    public void Decide_WhenSoManyWereTried_KeepsAQuarterForBlocks(int tried, bool blockWaits, int waitedSeconds, StormVerdict expected)
    {
        var traffic = new ChannelTraffic { TriedSingly = tried, BlockWaits = blockWaits, OldestDueAt = Now.AddSeconds(-waitedSeconds) };

        Assert.Equal(expected, StormThrottle.Decide(Limits, traffic, Now));
    }

    [Fact]
    public void Decide_WhenADigestWentInTheWindow_WaitsForTheNextWindow()
    {
        var traffic = new ChannelTraffic { TriedSingly = 20, OldestDueAt = Now.AddMinutes(-9), LastDigestAt = Now.AddMinutes(-9) };

        Assert.Equal(StormVerdict.Wait, StormThrottle.Decide(Limits, traffic, Now));
    }

    [Fact]
    public void Decide_WhenTheLimitIsReachedAndNothingWaits_Waits() =>
        Assert.Equal(StormVerdict.Wait, StormThrottle.Decide(Limits, new ChannelTraffic { TriedSingly = 20 }, Now));

    [Fact]
    public void Limits_WhenOneMessageIsAllowed_LetOthersHaveIt() => Assert.Equal(1, new StormLimits { Immediate = 1 }.ImmediateForOthers);

    [Fact]
    public void Defaults_AreAsDocumented()
    {
        Assert.Equal(20, Limits.Immediate);
        Assert.Equal(TimeSpan.FromMinutes(10), Limits.Window);
        Assert.Equal(TimeSpan.FromMinutes(2), Limits.GatherFor);
    }
}
