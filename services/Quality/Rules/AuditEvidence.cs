namespace LabPipeline.Quality.Rules;

/// <summary>What the newest audit of the warehouse found.</summary>
public sealed record AuditEvidence : IEvidence
{
    public const string AuditScope = "audit:warehouse";

    public bool HasFaults { get; init; }

    /// <summary>The audit's own words: how many files, how many faults, the first of them.</summary>
    public string Found { get; init; } = "";

    public DateTimeOffset At { get; init; }

    public string Scope => AuditScope;

    public string Subject => "warehouse";

    public string Title => "The warehouse";

    public string? TrialCode => null;

    public int? PullNo => null;

    public string? Barcode => null;
}
