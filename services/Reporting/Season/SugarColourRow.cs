using LabPipeline.Science.Statistics.Correlation;

namespace LabPipeline.Reporting.Season;

/// <summary>The relation of Hunter L to the logarithm of glucose over some plots.</summary>
/// <param name="Label">Which plots.</param>
/// <param name="N">How many.</param>
/// <param name="Pearson">With interval; null where it cannot be estimated.</param>
/// <param name="Spearman">Of the ranks.</param>
/// <param name="Line">Hunter L by natural logarithm of glucose.</param>
/// <param name="WhyNone">Reason; null where there is an estimate.</param>
internal sealed record SugarColourRow(string Label, int N, CorrelationEstimate? Pearson, CorrelationEstimate? Spearman, SimpleRegression? Line, string? WhyNone);
