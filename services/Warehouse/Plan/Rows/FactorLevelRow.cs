namespace LabPipeline.Warehouse.Plan.Rows;

/// <remarks><c>Position</c> counts through all levels of all factors, so that it orders factors as well.</remarks>
internal sealed record FactorLevelRow
{
    public string TrialCode { get; init; } = "";

    public string Factor { get; init; } = "";

    public string Level { get; init; } = "";

    public string? Unit { get; init; }

    public int Position { get; init; }
}
