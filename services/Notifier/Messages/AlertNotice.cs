using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Messages;

/// <summary>One alert: raised, cleared, not delivered elsewhere, or still waiting for somebody.</summary>
public sealed record AlertNotice : Notice
{
    public required string Event { get; init; }

    public required int AlertId { get; init; }

    public required int TimesRaised { get; init; }

    public required AlertLevel Level { get; init; }

    public required string Rule { get; init; }

    public string? TrialCode { get; init; }

    public int? PullNo { get; init; }

    public string? Barcode { get; init; }

    public required DateTimeOffset OpenedAt { get; init; }

    public required string Headline { get; init; }

    public required string Advice { get; init; }

    public required IReadOnlyList<Fact> Facts { get; init; }

    /// <summary>The channels that were not reached, for an undelivered alert.</summary>
    public string? MissingOn { get; init; }
}
