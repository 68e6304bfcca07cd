using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Reporting.Season;

/// <summary>The whole-season model of one response.</summary>
/// <param name="Analysis">Null where it could not be fitted.</param>
/// <param name="Clones">Adjusted means of clones at each pull, with standard errors.</param>
/// <param name="Cells">Adjusted means of treatment combinations at each pull.</param>
/// <param name="WhyNone">Why there is no model; null where there is one.</param>
internal sealed record SeasonTables(RepeatedAnalysis? Analysis, IReadOnlyList<Trajectory> Clones, IReadOnlyList<Trajectory> Cells, string? WhyNone)
{
    /// <summary>The contrasts of the plan, on means over all pulls.</summary>
    public IReadOnlyList<PlannedAnswer> Planned { get; init; } = [];
}
