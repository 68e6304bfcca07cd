namespace LabPipeline.Quality.Rules;

/// <summary>The messages one queue could not get handled and that wait for a person.</summary>
public sealed record ParkedMessagesEvidence : IEvidence
{
    public const string Kind = "parked:";

    /// <summary>The queue, such as <c>quality-readings-recorded</c>.</summary>
    public string Endpoint { get; init; } = "";

    public int Count { get; init; }

    /// <summary>Why the oldest of them failed.</summary>
    public string OldestReason { get; init; } = "";

    public DateTimeOffset OldestParkedAt { get; init; }

    public string Scope => Kind + Endpoint;

    public string Subject => Endpoint;

    public string Title => "Queue " + Endpoint;

    public string? TrialCode => null;

    public int? PullNo => null;

    public string? Barcode => null;
}
