namespace LabPipeline.Warehouse.Controls;

/// <summary>A reading that a failed control put in doubt.</summary>
public sealed record ReadingDoubt
{
    public long ReadingId { get; init; }

    public int RunId { get; init; }

    public string Barcode { get; init; } = "";

    /// <summary>The control, where it stands and what it read.</summary>
    public string Cause { get; init; } = "";
}
