namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record PlotRow
{
    public string TrialCode { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public string Block { get; init; } = "";

    public string? MainPlot { get; init; }

    public string CloneCode { get; init; } = "";

    public string Treatment { get; init; } = "";

    public string BayCode { get; init; } = "";
}
