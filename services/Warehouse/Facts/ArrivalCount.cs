namespace LabPipeline.Warehouse.Facts;

/// <summary>How many arrivals are in a state.</summary>
public sealed record ArrivalCount
{
    public string State { get; init; } = "";

    public int Arrivals { get; init; }
}
