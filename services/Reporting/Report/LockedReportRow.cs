namespace LabPipeline.Reporting.Report;

/// <summary>A locked report as the warehouse keeps it: the data it was made of, whole, and what it came out as.</summary>
internal sealed record LockedReportRow
{
    public string TrialCode { get; init; } = "";

    public int Version { get; init; }

    public DateTimeOffset LockedAt { get; init; }

    public string LockedBy { get; init; } = "";

    public long LastReadingId { get; init; }

    public long LastChangeId { get; init; }

    public string PlanSha256 { get; init; } = "";

    public string Software { get; init; } = "";

    /// <summary>Of the text behind <see cref="Data"/>.</summary>
    public string DataSha256 { get; init; } = "";

    /// <summary>Of the page's bytes.</summary>
    public string PageSha256 { get; init; } = "";

    /// <summary>The season as JSON, compressed, in base 64.</summary>
    public string Data { get; init; } = "";
}
