namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>One treatment mean to be compared.</summary>
/// <param name="Label">Name of the treatment, unique among those compared.</param>
/// <param name="Mean">Mean or adjusted (least squares) mean, in the unit of the response.</param>
/// <param name="N">Number of plots behind it, at least 1.</param>
public sealed record MeanEstimate(string Label, double Mean, int N);
