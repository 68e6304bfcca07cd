namespace LabPipeline.Science.Repeatability;

/// <summary>Mandel's statistics of one group.</summary>
/// <param name="H">h: how far its mean lies from the mean of all, in standard deviations of the means; signed.</param>
/// <param name="K">k: its standard deviation over the pooled one; 1 is average.</param>
public sealed record MandelStatistic(double H, double K);
