namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record PullRow
{
    public string TrialCode { get; init; } = "";

    public int PullNo { get; init; }

    public DateOnly DueOn { get; init; }

    public DateOnly OpensOn { get; init; }

    public DateOnly ClosesOn { get; init; }
}
