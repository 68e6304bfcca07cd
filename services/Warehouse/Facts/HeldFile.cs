namespace LabPipeline.Warehouse.Facts;

/// <summary>A file that lies in a drop folder and cannot be taken yet, with the reason.</summary>
public sealed record HeldFile
{
    public string Folder { get; init; } = "";

    public string Name { get; init; } = "";

    public long Bytes { get; init; }

    public string ReasonCode { get; init; } = "";

    public string Reason { get; init; } = "";

    public DateTimeOffset FirstSeenAt { get; init; }

    public DateTimeOffset LastSeenAt { get; init; }
}
