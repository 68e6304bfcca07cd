namespace LabPipeline.Reporting.Report;

/// <summary>A table for the console.</summary>
public sealed record PrintedTable(string Title, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows);
