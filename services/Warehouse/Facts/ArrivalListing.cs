namespace LabPipeline.Warehouse.Facts;

/// <summary>One line of the list of arrivals: what came, when, and what became of it.</summary>
public sealed record ArrivalListing
{
    public int FileId { get; init; }

    public string Folder { get; init; } = "";

    public string Name { get; init; } = "";

    public DateTimeOffset ArrivedAt { get; init; }

    /// <summary>stored, duplicate, refused, waiting, taken out.</summary>
    public string State { get; init; } = "";

    public string? Reason { get; init; }

    public string Sha256 { get; init; } = "";

    public int NewCount { get; init; }

    public int RepeatedCount { get; init; }

    public int ConflictingCount { get; init; }

    public int ParkedCount { get; init; }
}
