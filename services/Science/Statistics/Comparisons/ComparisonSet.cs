namespace LabPipeline.Science.Statistics.Comparisons;

/// <summary>Comparisons made by one procedure, with the words a report prints beside them.</summary>
/// <param name="Procedure">What was done: "Tukey HSD", "Fisher LSD protected by F".</param>
/// <param name="Alpha">The level; for Tukey, Dunnett, Holm and Bonferroni that of the whole set, for the LSD that of each pair.</param>
/// <param name="Intervals">What the intervals cover.</param>
/// <param name="MayDeclare">False when the procedure forbids calling any pair different, whatever its p.</param>
/// <param name="Comparisons">The pairs.</param>
public sealed record ComparisonSet(
    string Procedure, double Alpha, string Intervals, bool MayDeclare, IReadOnlyList<PairComparison> Comparisons)
{
    /// <summary>Whether the procedure calls this pair different: P at most Alpha, and declaring is allowed.</summary>
    public bool IsDifferent(PairComparison pair)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return MayDeclare && pair.P <= Alpha;
    }
}
