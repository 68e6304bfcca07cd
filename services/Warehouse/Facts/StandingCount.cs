namespace LabPipeline.Warehouse.Facts;

/// <summary>How many facts of a load got a standing, and the identifiers they got.</summary>
internal sealed record StandingCount
{
    public int Standing { get; init; }

    public int Facts { get; init; }

    public long FirstId { get; init; }

    public long LastId { get; init; }
}
