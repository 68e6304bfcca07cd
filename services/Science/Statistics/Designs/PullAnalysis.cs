using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Designs;

/// <summary>The analysis of one pull (or of a trial measured once).</summary>
/// <param name="Pull">Name of the pull; null where the design has none.</param>
/// <param name="Plots">Plots measured.</param>
/// <param name="GrandMean">On the scale of analysis.</param>
/// <param name="Anova">Tests, each naming its error; what cannot be estimated is listed in the table.</param>
/// <param name="Means">Adjusted means of every treatment term, on the scale of analysis.</param>
/// <param name="CoefficientOfVariation">Percent, of the smallest plots; null on a transformed scale or without a residual.</param>
/// <param name="Components">Variance components by unit; empty where they cannot be estimated.</param>
/// <param name="NextSeason">One entry for each error.</param>
/// <param name="Diagnostics">One entry a plot.</param>
public sealed record PullAnalysis(
    string? Pull,
    int Plots,
    double GrandMean,
    AnovaTable Anova,
    IReadOnlyList<AdjustedMeans> Means,
    double? CoefficientOfVariation,
    IReadOnlyList<VarianceComponent> Components,
    IReadOnlyList<NextSeasonPrecision> NextSeason,
    IReadOnlyList<PlotDiagnostic> Diagnostics)
{
    /// <summary>The means of a term by its name ("clone:rate").</summary>
    /// <exception cref="KeyNotFoundException">No such term.</exception>
    public AdjustedMeans MeansOf(string term) => Means.SingleOrDefault(means => means.Term.Name == term)
        ?? throw new KeyNotFoundException($"Found no means of '{term}'; there are {string.Join(", ", Means.Select(means => means.Term.Name))}.");
}
