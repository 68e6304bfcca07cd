using LabPipeline.Notifier.Storms;

namespace LabPipeline.Notifier.Routing;

/// <summary>What a channel wants to be told, when, and how much of it.</summary>
public sealed record ChannelPolicy
{
    /// <summary>The name kept with every delivery: <c>alert-file</c>, <c>email:</c> or <c>webhook:</c> and the name from the settings.</summary>
    public required string Name { get; init; }

    public required IReadOnlySet<AlertLevel> Levels { get; init; }

    /// <summary>Null where every hour is fine.</summary>
    public QuietHours? Quiet { get; init; }

    /// <summary>Null where every alert is told by itself.</summary>
    public DailyDigest? Digest { get; init; }

    /// <summary>Null where any number of messages is fine.</summary>
    public StormLimits? Storm { get; init; }

    /// <summary>Whether even an alert that came and went before it could be told is written.</summary>
    public bool IsCompleteRecord { get; init; }

    /// <summary>How many notices one sending may carry.</summary>
    public int BatchSize { get; init; } = 1;

    /// <summary>How long one sending may take.</summary>
    public required TimeSpan Timeout { get; init; }

    /// <summary>How long after its last telling an alert nobody has acknowledged is told again; null for never.</summary>
    public TimeSpan? RemindAfter { get; init; }

    /// <summary>How old an alert nobody has acknowledged is when it is told here although nobody asked for its level; null for never.</summary>
    public TimeSpan? EscalateAfter { get; init; }

    /// <summary>The moment from which an alert of <paramref name="level"/> is owed to this channel.</summary>
    public DateTimeOffset DueAt(DateTimeOffset now, AlertLevel level) => Quiet?.DueAt(now, level) ?? now;
}
