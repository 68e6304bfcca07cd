namespace LabPipeline.Warehouse.Schema;

/// <summary>A column with its meaning.</summary>
public sealed record DescribedColumn(string Name, string Meaning);
