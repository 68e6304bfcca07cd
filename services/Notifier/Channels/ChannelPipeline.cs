using Polly;
using Polly.CircuitBreaker;
using Polly.Timeout;

namespace LabPipeline.Notifier.Channels;

/// <summary>The time limit of one attempt, and the breaker that leaves a dead target alone for a while.</summary>
public static class ChannelPipeline
{
    public const int FailuresToOpen = 5;

    public static readonly TimeSpan Sampling = TimeSpan.FromMinutes(2);

    public static readonly TimeSpan Break = TimeSpan.FromSeconds(30);

    public static ResiliencePipeline<SendOutcome> Build(TimeSpan timeout, TimeProvider time) =>
        new ResiliencePipelineBuilder<SendOutcome> { TimeProvider = time }
            .AddCircuitBreaker(new CircuitBreakerStrategyOptions<SendOutcome>
            {
                ShouldHandle = new PredicateBuilder<SendOutcome>()
                    .Handle<Exception>(exception => exception is not OperationCanceledException)
                    .HandleResult(outcome => outcome.Result == SendResult.TryLater),
                FailureRatio = 1,
                MinimumThroughput = FailuresToOpen,
                SamplingDuration = Sampling,
                BreakDuration = Break,
            })
            .AddTimeout(new TimeoutStrategyOptions { Timeout = timeout })
            .Build();
}
