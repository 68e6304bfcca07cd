namespace LabPipeline.Notifier.Deliveries;

/// <summary>What becomes of claimed deliveries.</summary>
public sealed record Marking
{
    public required string State { get; init; }

    public int AttemptStep { get; init; }

    public required DateTimeOffset NextAttemptAt { get; init; }

    /// <summary>Null keeps what was written before.</summary>
    public DateTimeOffset? LastAttemptAt { get; init; }

    public DateTimeOffset? DeliveredAt { get; init; }

    /// <summary>Null keeps what was written before.</summary>
    public string? Error { get; init; }
}
