namespace LabPipeline.Science.Statistics.Correlation;

/// <summary>The range of values the data do not contradict.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct ConfidenceInterval(double Low, double High);
