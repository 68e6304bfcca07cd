namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record BayRow
{
    public string TrialCode { get; init; } = "";

    public string BayCode { get; init; } = "";

    public decimal? SetPointC { get; init; }
}
