namespace LabPipeline.Warehouse.Plan;

/// <summary>How much of a plot one sample is.</summary>
public sealed record SampleSize(int Tubers, int SlicesPerTuber, int Extracts);
