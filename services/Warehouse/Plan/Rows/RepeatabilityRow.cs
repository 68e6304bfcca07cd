namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record RepeatabilityRow
{
    public int QuantityId { get; init; }

    public int Version { get; init; }

    public decimal Constant { get; init; }

    public decimal Relative { get; init; }

    public int Pairs { get; init; }

    public bool Provisional { get; init; }

    public string Source { get; init; } = "";

    public DateTimeOffset KeptAt { get; init; }

    public string KeptBy { get; init; } = "";
}
