namespace LabPipeline.Warehouse.Plan;

/// <summary>A storage cell.</summary>
/// <remarks>
/// <c>SetPointCelsius</c>: null when the bay follows a schedule rather than one temperature.
/// </remarks>
public sealed record TrialBay(string Code, decimal? SetPointCelsius);
