namespace LabPipeline.Quality.Rules;

/// <summary>What a channel still owes.</summary>
public sealed record DeliveryEvidence : IEvidence
{
    public const string Kind = "delivery:";

    public string Channel { get; init; } = "";

    /// <summary>When the oldest alert it owes was due; null when it owes none.</summary>
    public DateTimeOffset? OldestDueAt { get; init; }

    public string? LastError { get; init; }

    public DateTimeOffset Now { get; init; }

    public string Scope => Kind + Channel;

    public string Subject => Channel;

    public string Title => $"Channel {Channel}";

    public string? TrialCode => null;

    public int? PullNo => null;

    public string? Barcode => null;
}
