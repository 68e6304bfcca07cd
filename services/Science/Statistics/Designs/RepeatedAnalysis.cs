using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The analysis over all pulls of the same plots.</summary>
/// <param name="SplitInTime">Error strata with pulls within plots; null where values are missing, then <see cref="WhyNoSplitInTime"/> says so.</param>
/// <param name="WhyNoSplitInTime">Reason; null where the table is there.</param>
/// <param name="Sphericity">Null where it cannot be estimated.</param>
/// <param name="Corrected">Within-plot tests corrected for sphericity; empty without it.</param>
/// <param name="Candidates">Covariance structures tried, in the order stated.</param>
/// <param name="Model">The mixed model with the smallest AIC; null where none could be fitted, the candidates say why.</param>
/// <param name="Tests">Its marginal tests with Kenward-Roger df; null without a model.</param>
/// <param name="Means">Its adjusted means of every term, pulls included; empty without a model.</param>
public sealed record RepeatedAnalysis(
    AnovaTable? SplitInTime,
    string? WhyNoSplitInTime,
    SphericityTest? Sphericity,
    IReadOnlyList<CorrectedTest> Corrected,
    IReadOnlyList<StructureCandidate> Candidates,
    MixedFit? Model,
    AnovaTable? Tests,
    IReadOnlyList<AdjustedMeans> Means)
{
    /// <summary>The means of a term by its name ("clone:rate:pull").</summary>
    /// <exception cref="KeyNotFoundException">No such term.</exception>
    public AdjustedMeans MeansOf(string term) => Means.SingleOrDefault(means => means.Term.Name == term)
        ?? throw new KeyNotFoundException($"Found no means of '{term}'; there are {string.Join(", ", Means.Select(means => means.Term.Name))}.");
}
