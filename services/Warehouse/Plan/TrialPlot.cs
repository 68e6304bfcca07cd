namespace LabPipeline.Warehouse.Plan;

/// <summary>A field plot: the experimental unit.</summary>
/// <remarks>
/// <c>MainPlot</c>: the main plot it lies in; null unless the design is a split-plot.
/// <c>Levels</c>: by factor name.
/// </remarks>
public sealed record TrialPlot(string Code, string Block, string? MainPlot, string BayCode, IReadOnlyDictionary<string, string> Levels);
