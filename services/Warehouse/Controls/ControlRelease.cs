namespace LabPipeline.Warehouse.Controls;

/// <summary>A person answers for the readings of a run although controls of it had failed.</summary>
public sealed record ControlRelease
{
    public string Instrument { get; init; } = "";

    public string Run { get; init; } = "";

    /// <summary>The failed controls the person knew of, as a JSON array of texts; one that fails later is not covered.</summary>
    public string Controls { get; init; } = "[]";

    public DateTimeOffset ReleasedAt { get; init; }

    public string ReleasedBy { get; init; } = "";

    public string Why { get; init; } = "";
}
