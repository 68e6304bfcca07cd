namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>A point of the likelihood surface.</summary>
/// <param name="Value">REML log-likelihood.</param>
/// <param name="Variance">The profiled variance.</param>
/// <param name="Solution">The change of the fixed effects from least squares, in the columns of the search.</param>
/// <param name="Gradient">Finds the slopes by the free numbers; asked for only where a step is taken.</param>
internal sealed record Likelihood(double Value, double Variance, double[] Solution, Func<double[]> Gradient);
