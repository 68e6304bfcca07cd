using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Statistics.Mixed;

/// <summary>A covariance parameter as a reader knows it, with the derivative of the covariance between pulls by it.</summary>
internal sealed record NaturalParameter(string Name, double Value, Matrix Derivative);
