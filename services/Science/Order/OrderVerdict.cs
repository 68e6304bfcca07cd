namespace LabPipeline.Science.Order;

/// <summary>How a reported order stands to the planned one.</summary>
/// <param name="Findings">Differences, by place; a sample is in at most one of them.</param>
/// <param name="NotReported">Planned samples that were not reported, in planned order. Without places from the instrument, one that was left out looks like a shift of those behind it.</param>
public sealed record OrderVerdict(IReadOnlyList<OrderFinding> Findings, IReadOnlyList<string> NotReported)
{
    /// <summary>Whether every reported sample stands at its planned place; some may not be reported yet.</summary>
    public bool IsInOrder => Findings.Count == 0;
}
