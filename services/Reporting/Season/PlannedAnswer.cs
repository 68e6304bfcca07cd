using LabPipeline.Science.Statistics.Comparisons;

namespace LabPipeline.Reporting.Season;

/// <summary>A planned contrast as estimated.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Estimate">On the scale of analysis; null where it cannot be estimated.</param>
/// <param name="WhyNone">Why not; null where it can.</param>
internal sealed record PlannedAnswer(PlannedQuestion Question, ContrastEstimate? Estimate, string? WhyNone);
