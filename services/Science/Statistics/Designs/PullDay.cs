namespace LabPipeline.Science.Statistics.Designs;

/// <summary>A scheduled pull.</summary>
/// <param name="Name">As in the plot means.</param>
/// <param name="Day">Days after harvest; the spacing of pulls enters the covariance between them.</param>
public sealed record PullDay(string Name, double Day);
