namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record SampleRow
{
    public string Barcode { get; init; } = "";

    public string TrialCode { get; init; } = "";

    public string PlotCode { get; init; } = "";

    public int PullNo { get; init; }

    public int RunningNo { get; init; }
}
