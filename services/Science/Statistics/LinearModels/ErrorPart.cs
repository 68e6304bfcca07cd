namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>What one error contributes to the variance of a contrast.</summary>
/// <param name="Stratum">Name of the error.</param>
/// <param name="Variance">Contribution, in squared units of the response.</param>
/// <param name="Df">Degrees of freedom of that error's estimate.</param>
public sealed record ErrorPart(string Stratum, double Variance, double Df);
