namespace LabPipeline.Warehouse.Facts;

/// <summary>One appearance of a file in a drop folder.</summary>
public sealed record Arrival
{
    public int ArrivalId { get; init; }

    public int FileId { get; init; }

    public string Folder { get; init; } = "";

    public string Name { get; init; } = "";

    public DateTimeOffset ModifiedAt { get; init; }

    public DateTimeOffset ArrivedAt { get; init; }

    /// <summary>The same bytes had arrived before, under this or another name.</summary>
    public bool Again { get; init; }

    /// <summary>The original has been moved out of the drop folder.</summary>
    public bool PutAway { get; init; }
}
