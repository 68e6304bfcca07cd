namespace LabPipeline.Warehouse.Schema;

/// <summary>A table or view with its meaning and that of its columns.</summary>
public sealed record DescribedTable(string Name, string Meaning, IReadOnlyList<DescribedColumn> Columns);
