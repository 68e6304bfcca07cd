namespace LabPipeline.Warehouse.Facts;

/// <summary>A stored fact as it can be compared with the line of the file it came from.</summary>
public sealed record KeptFact
{
    public int Line { get; init; }

    public int QuantityId { get; init; }

    public decimal Value { get; init; }

    public string RawValue { get; init; } = "";
}
