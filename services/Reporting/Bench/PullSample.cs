namespace LabPipeline.Reporting.Bench;

/// <summary>A sample of a pull with its place in the field and in storage.</summary>
public sealed record PullSample
{
    public string Barcode { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public string BayCode { get; init; } = "";

    public string CloneName { get; init; } = "";

    public string Treatment { get; init; } = "";
}
