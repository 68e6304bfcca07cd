using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Bus.Rabbit;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>A consumer that stopped without a word is seen, and one that only idles is not taken for it.</summary>
public sealed class QueueReviewTests
{
    private const string Stalled = "q holds 5 messages and its consumer gets none";

    private static readonly TimeSpan Stall = TimeSpan.FromSeconds(30);

    private readonly FakeTimeProvider _time = new();
    private readonly EndpointPulse _pulse;
    private readonly QueueReview _review;

    public QueueReviewTests()
    {
        _pulse = new EndpointPulse(_time);
        _review = new QueueReview("q", _pulse, Stall, _time);
    }

    [Fact]
    public void Observe_WhenTheQueueOrItsConsumerIsGone_SaysSoAtOnce()
    {
        Assert.Equal("queue q is gone", _review.Observe(null, null));
        Assert.Equal("nobody consumes q any more", _review.Observe(0, 0));
    }

    [Fact]
    [Shows(40)]
    public void Observe_WhenMessagesComeAfterALongIdleTime_WaitsBeforeItCallsItAStall()
    {
        _time.Advance(TimeSpan.FromHours(3));

        Assert.Null(_review.Observe(5, 1));
        _time.Advance(Stall);
        Assert.Null(_review.Observe(5, 1));
        _time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(Stalled, _review.Observe(5, 1));
    }

    [Fact]
    public void Observe_WhileOneIsInHandOrOneWasJustFinished_CallsItNoStall()
    {
        _review.Observe(5, 1);
        _pulse.Enter();
        _time.Advance(10 * Stall);
        Assert.Null(_review.Observe(5, 1));

        _pulse.Leave();
        Assert.Null(_review.Observe(5, 1));
        _time.Advance(Stall);
        Assert.Null(_review.Observe(5, 1));
    }

    [Fact]
    public void Observe_WhenTheQueueWasEmptyBetween_CountsFromAnew()
    {
        _review.Observe(5, 1);
        _time.Advance(Stall);
        _review.Observe(0, 1);
        _time.Advance(Stall);

        Assert.Null(_review.Observe(5, 1));
    }
}
