namespace LabPipeline.Warehouse.Plan;

/// <summary>The layout and its factors.</summary>
/// <remarks>
/// <c>CloneFactor</c>: name of the factor whose levels are the clones.
/// <c>MainPlotFactor</c>: name of the factor on main plots; null unless the design is a split-plot.
/// <c>IncompleteReason</c>: why treatments are missing from some blocks; null when the design must be complete.
/// </remarks>
public sealed record TrialDesign(
    DesignKind Kind,
    IReadOnlyList<string> Blocks,
    IReadOnlyList<TrialFactor> Factors,
    string CloneFactor,
    string? MainPlotFactor,
    string? IncompleteReason);
