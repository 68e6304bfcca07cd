namespace LabPipeline.Warehouse.Plan.Rows;

/// <summary>A trial as its table holds it.</summary>
public sealed record TrialRow
{
    public string TrialCode { get; init; } = "";

    public string Title { get; init; } = "";

    public string Question { get; init; } = "";

    public int Season { get; init; }

    public string Mark { get; init; } = "";

    public string Site { get; init; } = "";

    public string Design { get; init; } = "";

    public string CloneFactor { get; init; } = "";

    public string? MainPlotFactor { get; init; }

    public string? IncompleteReason { get; init; }

    public DateOnly HarvestedOn { get; init; }

    public string TimeZone { get; init; } = "";

    public string StandardClone { get; init; } = "";

    public int TubersPerSample { get; init; }

    public int SlicesPerTuber { get; init; }

    public int ExtractsPerSample { get; init; }

    public string DryMatterRelation { get; init; } = "";

    public decimal DarkBelowHunterL { get; init; }

    public int SevereFromScore { get; init; }

    public string PlanSha256 { get; init; } = "";

    public DateTimeOffset LoadedAt { get; init; }
}
