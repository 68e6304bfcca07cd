namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A row of the delivery table.</summary>
internal sealed record StoredDelivery
{
    public const string Select =
        """
        select alert_id as AlertId, event, channel, state, attempts, digest_id as DigestId, last_error as LastError,
               due_at as DueAt, next_attempt_at as NextAttemptAt, delivered_at as DeliveredAt
        from delivery order by delivery_id
        """;

    public int AlertId { get; init; }

    public string Event { get; init; } = "";

    public string Channel { get; init; } = "";

    public string State { get; init; } = "";

    public int Attempts { get; init; }

    public string? DigestId { get; init; }

    public string? LastError { get; init; }

    public DateTimeOffset DueAt { get; init; }

    public DateTimeOffset NextAttemptAt { get; init; }

    public DateTimeOffset? DeliveredAt { get; init; }
}
