namespace LabPipeline.Science.Statistics.Tests;

/// <summary>How far one observation lies from the model fitted without it.</summary>
/// <param name="Index">Position of the observation, from 0.</param>
/// <param name="Studentised">Externally studentised residual, t on error df - 1.</param>
/// <param name="P">Two-sided p value as if this observation had been chosen beforehand.</param>
/// <param name="BonferroniP">min(1, n × P): the p value for having looked at all n.</param>
public sealed record ResidualOutlier(int Index, double Studentised, double P, double BonferroniP);
