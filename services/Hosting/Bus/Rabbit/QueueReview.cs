namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>Judges from what the broker says of a queue, and from its consumer's pulse, whether the consumer has silently stopped.</summary>
internal sealed class QueueReview(string queue, EndpointPulse pulse, TimeSpan stall, TimeProvider time)
{
    private long? _waitingSince;

    public string Queue => queue;

    /// <param name="waiting">Messages the broker has not handed out; null when it knows no such queue.</param>
    /// <param name="consumers">Consumers the broker knows of.</param>
    /// <returns>What is wrong, or null.</returns>
    public string? Observe(uint? waiting, uint? consumers)
    {
        if (waiting is null)
        {
            return $"queue {queue} is gone";
        }

        if (consumers is null or 0)
        {
            return $"nobody consumes {queue} any more";
        }

        if (waiting == 0 || pulse.InHand > 0)
        {
            _waitingSince = null;
            return null;
        }

        // A message that has just come to a queue idle for hours is no stall yet.
        _waitingSince ??= time.GetTimestamp();
        return time.GetElapsedTime(_waitingSince.Value) > stall && pulse.Idle > stall
            ? $"{queue} holds {waiting} messages and its consumer gets none"
            : null;
    }
}
