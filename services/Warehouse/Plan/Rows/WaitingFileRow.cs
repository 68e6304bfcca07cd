namespace LabPipeline.Warehouse.Plan.Rows;

internal sealed record WaitingFileRow
{
    public int FileId { get; init; }

    public string Sha256 { get; init; } = "";
}
