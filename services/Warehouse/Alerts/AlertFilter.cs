namespace LabPipeline.Warehouse.Alerts;

/// <summary>Which alerts to list; what is null does not narrow.</summary>
public sealed record AlertFilter
{
    public string? State { get; init; }

    public string? Level { get; init; }

    public string? RuleName { get; init; }

    public string? TrialCode { get; init; }

    public string? Barcode { get; init; }

    /// <summary>Block before hold before note; otherwise the newest first whatever their level.</summary>
    public bool WorstFirst { get; init; }

    /// <summary>At most so many.</summary>
    public int Most { get; init; } = 200;

    /// <summary>So many are passed over first, for the pages after the first.</summary>
    public int Skip { get; init; }
}
