using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>A delivery to be written down before anything is sent.</summary>
public sealed record NewDelivery
{
    public required int AlertId { get; init; }

    public required int TimesRaised { get; init; }

    public required string Event { get; init; }

    public required string Channel { get; init; }

    public required int Urgency { get; init; }

    public required string State { get; init; }

    public string? Reason { get; init; }

    /// <summary>The digest it waits for; null when it goes by itself.</summary>
    public string? DigestId { get; init; }

    public DateTimeOffset DueAt { get; init; }

    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>The same delivery with its time: now, after the quiet hours, or with the day's digest.</summary>
    public NewDelivery Scheduled(ChannelPolicy? channel, AlertLevel level) => channel?.Digest?.NextAfter(CreatedAt, level) is { } digestAt
        ? this with { DueAt = digestAt, DigestId = NoticeIdentity.OfDigest(Channel, digestAt) }
        : this with { DueAt = channel?.DueAt(CreatedAt, level) ?? CreatedAt };
}
