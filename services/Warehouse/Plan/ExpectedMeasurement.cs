using LabPipeline.Science.Quantities;

namespace LabPipeline.Warehouse.Plan;

/// <summary>A quantity that every sample of a pull must come with, and in how many readings.</summary>
public sealed record ExpectedMeasurement(int PullNumber, Quantity Quantity, int Readings);
