namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>An analysis of variance: its lines in order, and what could not be estimated.</summary>
/// <param name="Method">Kind of sums of squares and errors, in words; printed above the table.</param>
/// <param name="Rows">Lines by stratum, the residual last in each.</param>
/// <param name="NotEstimable">Terms left out or cut short, with their reason; empty when nothing is.</param>
public sealed record AnovaTable(string Method, IReadOnlyList<AnovaRow> Rows, IReadOnlyList<NotEstimableTerm> NotEstimable)
{
    /// <summary>The line of a term in a stratum (an empty stratum for a table with one error).</summary>
    /// <exception cref="KeyNotFoundException">No such line; the message names the lines there are.</exception>
    public AnovaRow Find(string term, string stratum = "") =>
        Rows.SingleOrDefault(row => row.Term == term && row.Stratum == stratum)
        ?? throw new KeyNotFoundException($"Found no line '{term}' in stratum '{stratum}'; the table has {string.Join(", ", Rows.Select(row => $"{row.Stratum}/{row.Term}"))}.");
}
