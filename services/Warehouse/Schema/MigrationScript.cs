namespace LabPipeline.Warehouse.Schema;

/// <summary>One numbered schema script.</summary>
public sealed record MigrationScript(int Number, string Name, string Text, string Checksum);
