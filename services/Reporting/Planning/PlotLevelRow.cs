namespace LabPipeline.Reporting.Planning;

/// <summary>A level of a stored plot.</summary>
internal sealed record PlotLevelRow
{
    public string PlotCode { get; init; } = "";

    public string Factor { get; init; } = "";

    public string Level { get; init; } = "";
}
