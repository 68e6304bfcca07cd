namespace LabPipeline.Warehouse.Alerts;

/// <summary>Which alerts to list; what is null does not narrow.</summary>
public sealed record AlertFilter
{
    public string? State { get; init; }

    public string? Level { get; init; }

    public string? RuleName { get; init; }

    public string? TrialCode { get; init; }

    public string? Barcode { get; init; }

    /// <summary>At most so many, the newest first.</summary>
    public int Most { get; init; } = 200;
}
