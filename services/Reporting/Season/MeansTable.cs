namespace LabPipeline.Reporting.Season;

/// <summary>Means of one term as a report prints them.</summary>
/// <param name="Term">"clone:nitrogen".</param>
/// <param name="Rows">In plan order.</param>
/// <param name="Precision">SED, LSD and HSD; null where differences have no standard error, and <paramref name="Reason"/> says why.</param>
/// <param name="Reason">Why means or their comparisons are missing; null where none is.</param>
internal sealed record MeansTable(string Term, IReadOnlyList<MeanRow> Rows, MeansPrecision? Precision, string? Reason)
{
    public MeanRow? Find(string label) => Rows.FirstOrDefault(row => row.Label == label);
}
