namespace LabPipeline.Warehouse.Facts;

/// <summary>The ledger's row for one content, whatever the names it arrived under.</summary>
public sealed record SourceFile
{
    public int FileId { get; init; }

    public string Sha256 { get; init; } = "";

    public string Kind { get; init; } = "";

    public string Name { get; init; } = "";

    public long Bytes { get; init; }

    /// <summary>Path inside the archive folder.</summary>
    public string ArchivedAs { get; init; } = "";

    public DateTimeOffset TakenAt { get; init; }

    public string State { get; init; } = "";

    public string? ReasonCode { get; init; }

    public string? Reason { get; init; }

    public string? Profile { get; init; }

    public int? ProfileVersion { get; init; }

    public string? Method { get; init; }

    public string? MethodFacts { get; init; }

    public int RowCount { get; init; }

    public int NewCount { get; init; }

    public int RepeatedCount { get; init; }

    public int ConflictingCount { get; init; }

    public int ParkedCount { get; init; }

    public long? FirstReadingId { get; init; }

    public long? LastReadingId { get; init; }
}
