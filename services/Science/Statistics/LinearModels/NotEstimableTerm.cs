namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>A term, or part of one, that the data cannot answer.</summary>
/// <param name="Term">Name of the term.</param>
/// <param name="LostDf">How many of its degrees of freedom are lost.</param>
/// <param name="Reason">Why, for a reader.</param>
public sealed record NotEstimableTerm(string Term, int LostDf, string Reason);
