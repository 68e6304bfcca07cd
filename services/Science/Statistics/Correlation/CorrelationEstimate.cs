namespace LabPipeline.Science.Statistics.Correlation;

/// <summary>A correlation coefficient with its test and interval.</summary>
/// <param name="Method">"Pearson" or "Spearman".</param>
/// <param name="N">Number of pairs; of plot means, not of repeated readings.</param>
/// <param name="Coefficient">-1 to 1.</param>
/// <param name="T">coefficient × √[df / (1 - coefficient²)]; infinite for a perfect relation.</param>
/// <param name="Df">N - 2.</param>
/// <param name="P">Two-sided p value of "no relation".</param>
/// <param name="Interval">Confidence interval, or null where it is not estimable: below 4 pairs, or a perfect relation.</param>
public sealed record CorrelationEstimate(string Method, int N, double Coefficient, double T, double Df, double P, ConfidenceInterval? Interval);
