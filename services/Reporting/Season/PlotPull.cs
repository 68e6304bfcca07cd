using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Season;

/// <summary>The mean of one plot at one pull, in the unit of the response.</summary>
/// <param name="Plot">The plot.</param>
/// <param name="PullNo">The pull.</param>
/// <param name="Value">Mean of its samples, normally one.</param>
/// <param name="BelowLimit">Whether all of them lie below the quantitation limit, which then stands for the value.</param>
internal sealed record PlotPull(PlotFact Plot, int PullNo, double Value, bool BelowLimit)
{
    /// <summary>Whether any of them stands beside a failed control that nobody has released.</summary>
    public bool InDoubt { get; init; }
}
