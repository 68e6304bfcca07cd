namespace LabPipeline.Science.Statistics.Designs;

/// <summary>A covariance structure that was tried.</summary>
/// <param name="Structure">Its name.</param>
/// <param name="LogLikelihood">Restricted log-likelihood; null where it could not be fitted.</param>
/// <param name="Parameters">Fixed effects and covariance parameters.</param>
/// <param name="Aic">Smaller is better.</param>
/// <param name="NotFitted">Why it could not be fitted; null where it was.</param>
public sealed record StructureCandidate(string Structure, double? LogLikelihood, int? Parameters, double? Aic, string? NotFitted);
