namespace LabPipeline.Warehouse.Results;

/// <summary>A repeatability the laboratory keeps for a quantity: s_r = the larger of a constant and a share of the level.</summary>
public sealed record RepeatabilityRow
{
    public int QuantityId { get; init; }

    /// <summary>Counted up with every value kept; the highest is in use.</summary>
    public int Version { get; init; }

    /// <summary>s_r at low levels, in the quantity's unit.</summary>
    public decimal Constant { get; init; }

    /// <summary>s_r as a share of the level: 0.044 is 4.4 %.</summary>
    public decimal Relative { get; init; }

    /// <summary>Pairs of duplicates it was computed from.</summary>
    public int Pairs { get; init; }

    public bool Provisional { get; init; }

    public string Source { get; init; } = "";

    public DateTimeOffset KeptAt { get; init; }

    public string KeptBy { get; init; } = "";
}
