namespace LabPipeline.Warehouse.Facts;

/// <summary>Where a sample stands in its trial.</summary>
public sealed record TrailSample
{
    public string Barcode { get; init; } = "";

    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }

    public DateOnly DueOn { get; init; }

    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public string CloneName { get; init; } = "";

    public string Treatment { get; init; } = "";

    public string BayCode { get; init; } = "";
}
