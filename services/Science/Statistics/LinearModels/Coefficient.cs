namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A regression coefficient: of a covariate as given, of a factor as a deviation that sums to zero over the levels.</summary>
/// <param name="Name">The column: "(intercept)", "speed", "clone[A]".</param>
/// <param name="Estimate">Null where the column is aliased with those before it.</param>
public sealed record Coefficient(string Name, LinearEstimate? Estimate);
