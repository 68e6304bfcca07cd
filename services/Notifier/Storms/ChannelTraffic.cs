namespace LabPipeline.Notifier.Storms;

/// <summary>What a channel was sent lately and what waits for it.</summary>
public sealed record ChannelTraffic
{
    /// <summary>Deliveries tried one by one within the window, with or without success.</summary>
    public int TriedSingly { get; init; }

    /// <summary>When a digest was last tried within the window; null when none did.</summary>
    public DateTimeOffset? LastDigestAt { get; init; }

    /// <summary>Since when the oldest waiting delivery has been due; null when nothing waits, or when the limit is too far to look.</summary>
    public DateTimeOffset? OldestDueAt { get; init; }

    public bool BlockWaits { get; init; }
}
