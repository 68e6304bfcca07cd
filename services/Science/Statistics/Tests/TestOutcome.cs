namespace LabPipeline.Science.Statistics.Tests;

/// <summary>The outcome of one test of a hypothesis.</summary>
/// <param name="Test">Name of the test, as a report prints it.</param>
/// <param name="Statistic">The value of the test statistic.</param>
/// <param name="Df1">Degrees of freedom of the statistic, or of its numerator.</param>
/// <param name="Df2">Degrees of freedom of the denominator, where the statistic is an F.</param>
/// <param name="P">Probability of a statistic at least this extreme when the hypothesis holds.</param>
public sealed record TestOutcome(string Test, double Statistic, double Df1, double? Df2, double P);
