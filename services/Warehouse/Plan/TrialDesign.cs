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
    string? IncompleteReason)
{
    /// <summary>Largest seed a document may state: every program reads whole numbers up to it exactly.</summary>
    public const long LargestSeed = 9_007_199_254_740_991;

    /// <summary>The seed the layout was drawn with; null when the document does not say.</summary>
    public long? Seed { get; init; }
}
