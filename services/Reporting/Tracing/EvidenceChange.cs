namespace LabPipeline.Reporting.Tracing;

/// <summary>What a person or a rule did to a file or an alert behind a number.</summary>
public sealed record EvidenceChange
{
    public DateTimeOffset At { get; init; }

    public string Who { get; init; } = "";

    public string What { get; init; } = "";

    public string Subject { get; init; } = "";

    public string Why { get; init; } = "";
}
