namespace LabPipeline.Notifier.Deliveries;

/// <summary>One alert of a digest.</summary>
public sealed record DigestRow
{
    public int AlertId { get; init; }

    public string Event { get; init; } = "";

    public string Level { get; init; } = "";

    public string? TrialCode { get; init; }

    public int? PullNo { get; init; }

    public string Headline { get; init; } = "";
}
