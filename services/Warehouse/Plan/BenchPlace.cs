namespace LabPipeline.Warehouse.Plan;

/// <summary>A place of a bench order with the sample that belongs there.</summary>
public sealed record BenchPlace
{
    /// <summary>Counts from 1 through the whole pull, block after block.</summary>
    public int Position { get; init; }

    public string Barcode { get; init; } = "";

    public string Block { get; init; } = "";

    public string PlotCode { get; init; } = "";
}
