namespace LabPipeline.Warehouse.Facts;

/// <summary>One result of a sample with the readings it was computed from.</summary>
public sealed record TrailResult
{
    public string Quantity { get; init; } = "";

    public decimal Value { get; init; }

    public string Unit { get; init; } = "";

    public bool BelowLimit { get; init; }

    public int N { get; init; }

    public decimal? S { get; init; }

    public string Basis { get; init; } = "";

    public string FromReadings { get; init; } = "";

    /// <summary>Whether a reading behind it is in doubt because a control beside it failed.</summary>
    public bool InDoubt { get; init; }
}
