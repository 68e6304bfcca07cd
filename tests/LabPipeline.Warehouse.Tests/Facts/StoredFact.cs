namespace LabPipeline.Warehouse.Tests.Facts;

/// <summary>What a test looks at in a row of a fact table.</summary>
internal sealed record StoredFact
{
    public long Id { get; init; }

    public string RowKey { get; init; } = "";

    public decimal Value { get; init; }

    public int Standing { get; init; }

    public string File { get; init; } = "";

    public int Line { get; init; }
}
