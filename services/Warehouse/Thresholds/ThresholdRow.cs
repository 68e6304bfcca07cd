namespace LabPipeline.Warehouse.Thresholds;

/// <summary>A trial's own limit for a quantity, with who set it, when and why.</summary>
public sealed record ThresholdRow
{
    public string TrialCode { get; init; } = "";

    public int QuantityId { get; init; }

    /// <summary>One of <see cref="ThresholdKinds"/>.</summary>
    public string Kind { get; init; } = "";

    /// <summary>Counted up with every change.</summary>
    public int Version { get; init; }

    /// <summary>In the quantity's canonical unit; null where the trial goes back to the default.</summary>
    public decimal? Value { get; init; }

    /// <summary>Decides about what is measured from this instant on.</summary>
    public DateTimeOffset InForceFrom { get; init; }

    public DateTimeOffset SetAt { get; init; }

    public string SetBy { get; init; } = "";

    public string Why { get; init; } = "";
}
