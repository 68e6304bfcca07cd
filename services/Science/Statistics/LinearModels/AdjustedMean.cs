namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>The mean of one level or cell, adjusted to equal weights of everything else in the model.</summary>
/// <param name="Levels">Level of each factor of the term, in the order of the term.</param>
/// <param name="Count">Observed rows behind it.</param>
/// <param name="Estimate">The mean with its standard error; null where it cannot be estimated.</param>
/// <param name="Value">The mean alone; present too where the standard error has no single meaning (error strata).</param>
/// <param name="NotEstimable">Why there is no mean; null where there is one.</param>
public sealed record AdjustedMean(IReadOnlyList<string> Levels, int Count, double? Value, LinearEstimate? Estimate, string? NotEstimable)
{
    /// <summary>The levels joined by a colon.</summary>
    public string Label => string.Join(":", Levels);
}
