namespace LabPipeline.Reporting.Planning;

/// <summary>The mean of a stored plot at a pull.</summary>
internal sealed record PlotValueRow
{
    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public string? MainPlot { get; init; }

    public int PullNo { get; init; }

    public double Value { get; init; }

    public int BelowLimit { get; init; }
}
