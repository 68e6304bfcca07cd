using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>States that rows are pulls of plots, and how the pulls of one plot vary together.</summary>
/// <param name="Plot">The term whose combinations number the plots; at most one row a plot and time.</param>
/// <param name="Times">The time of each row, in days or any one unit; equal numbers mean the same pull.</param>
/// <param name="Structure">Covariance between the pulls of a plot.</param>
public sealed record RepeatedPulls(Term Plot, IReadOnlyList<double> Times, CovarianceStructure Structure);
