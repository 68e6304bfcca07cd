namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A quantitative explanatory variable, used as given (not centred, not scaled).</summary>
/// <param name="Name">How terms refer to it.</param>
/// <param name="Values">One finite number a row.</param>
public sealed record Covariate(string Name, IReadOnlyList<double> Values);
