namespace LabPipeline.Science.Repeatability;

/// <summary>Outcome of a duplicate screen.</summary>
/// <param name="Rule">Which difference was compared.</param>
/// <param name="Found">The difference: % for the relative rule, the results' unit for the absolute one.</param>
/// <param name="Limit">What it was compared with, in the same unit.</param>
public sealed record DuplicateVerdict(DuplicateRule Rule, decimal Found, decimal Limit)
{
    /// <summary>Whether the pair agrees; equality agrees.</summary>
    public bool Agrees => Found <= Limit;
}
