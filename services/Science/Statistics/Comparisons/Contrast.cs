namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>A planned question about several means: Σ cᵢ × meanᵢ.</summary>
/// <param name="Label">The question in words: "cold storage against warm storage".</param>
/// <param name="Coefficients">One for each mean, in their order, adding to 0 and not all 0.</param>
public sealed record Contrast(string Label, IReadOnlyList<double> Coefficients);
