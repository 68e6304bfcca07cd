namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record ExpectedRow
{
    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }

    public int QuantityId { get; init; }

    public int Readings { get; init; }
}
