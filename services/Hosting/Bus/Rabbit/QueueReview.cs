namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>Decides from what the broker says of a queue, and from its consumer's pulse, whether the consumer has silently stopped.</summary>
internal static class QueueReview
{
    /// <param name="queue">The queue's name.</param>
    /// <param name="waiting">Messages the broker has not handed out.</param>
    /// <param name="consumers">Consumers the broker knows of.</param>
    /// <param name="inHand">Messages this process handles now.</param>
    /// <param name="idle">How long ago this process last got or finished one.</param>
    /// <param name="stall">How long a consumer may idle before a waiting queue.</param>
    /// <returns>What is wrong, or null.</returns>
    public static string? Decide(string queue, uint waiting, uint consumers, int inHand, TimeSpan idle, TimeSpan stall) => (waiting, consumers, inHand) switch
    {
        (_, 0, _) => $"nobody consumes {queue} any more",
        ( > 0, _, 0) when idle > stall => $"{queue} holds {waiting} messages and its consumer gets none",
        _ => null,
    };
}
