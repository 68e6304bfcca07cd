namespace LabPipeline.Science.Repeatability;

/// <summary>What the acceptability check says about results obtained so far.</summary>
/// <param name="Outcome">Where the check stands.</param>
/// <param name="FinalResult">The final result, unrounded; null until there is one.</param>
/// <param name="ResultsUsed">How many results, from the first, the outcome rests on.</param>
/// <param name="MoreNeeded">How many more results to obtain; 0 when there is a final result.</param>
/// <param name="Rule">The rule used, such as "median of 4"; stored with the result.</param>
/// <param name="Steps">Every comparison made, in order.</param>
public sealed record AcceptabilityDecision(
    AcceptabilityOutcome Outcome,
    decimal? FinalResult,
    int ResultsUsed,
    int MoreNeeded,
    string Rule,
    IReadOnlyList<AcceptabilityStep> Steps)
{
    /// <summary>The last comparison, the one the outcome rests on.</summary>
    public AcceptabilityStep LastStep => Steps[^1];
}
