namespace LabPipeline.Quality.Results;

/// <summary>A sample's place in its trial.</summary>
public sealed record SampleIdentity
{
    public string Barcode { get; init; } = "";

    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }

    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public string CloneCode { get; init; } = "";

    public string Treatment { get; init; } = "";

    public string BayCode { get; init; } = "";

    /// <summary>Whether a person noted that no further extract can be made.</summary>
    public bool NoMoreExtracts { get; init; }
}
