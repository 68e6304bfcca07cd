namespace LabPipeline.Warehouse.Plan;

/// <summary>What became of an offered bench order, and the one in effect now.</summary>
public sealed record BenchOrderKeep(BenchOrderState State, BenchOrder InEffect);
