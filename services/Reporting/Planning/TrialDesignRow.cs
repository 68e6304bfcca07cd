namespace LabPipeline.Reporting.Planning;

/// <summary>The design of a stored trial.</summary>
internal sealed record TrialDesignRow
{
    public string Design { get; init; } = "";

    public string? MainPlotFactor { get; init; }
}
