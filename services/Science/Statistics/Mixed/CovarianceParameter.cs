namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>An estimated variance, covariance or correlation.</summary>
/// <param name="Name">What it is: "variance of block", "residual variance", "correlation at the shortest interval".</param>
/// <param name="Value">Squared units of the response; a correlation has none.</param>
public sealed record CovarianceParameter(string Name, double Value);
