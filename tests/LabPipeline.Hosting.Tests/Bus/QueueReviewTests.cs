using LabPipeline.Hosting.Bus.Rabbit;

namespace LabPipeline.Hosting.Tests.Bus;

public sealed class QueueReviewTests
{
    private static readonly TimeSpan Stall = TimeSpan.FromSeconds(30);

    [Theory]
    [InlineData(0, 1, 0, 3600, null)]
    [InlineData(5, 1, 0, 30, null)]
    [InlineData(5, 1, 1, 3600, null)]
    [InlineData(5, 1, 0, 31, "q holds 5 messages and its consumer gets none")]
    [InlineData(0, 0, 0, 0, "nobody consumes q any more")]
    [InlineData(5, 0, 3, 0, "nobody consumes q any more")]
    public void Decide_WhenAQueueIsLookedAt_SeesAConsumerThatStopped(uint waiting, uint consumers, int inHand, int idleSeconds, string? expected) =>
        Assert.Equal(expected, QueueReview.Decide("q", waiting, consumers, inHand, TimeSpan.FromSeconds(idleSeconds), Stall));
}
