using LabPipeline.Warehouse.Controls;
using LabPipeline.Warehouse.Plan.Rows;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Reporting.Season.Data;

/// <summary>Everything a season's report is made of, as it stood at the freeze. Kept whole with a locked report, so that the report can be made again.</summary>
internal sealed record SeasonData
{
    public required FrozenAt Freeze { get; init; }

    public required TrialRow Trial { get; init; }

    public required IReadOnlyList<LevelFact> Levels { get; init; }

    public required IReadOnlyList<BayFact> Bays { get; init; }

    public required IReadOnlyList<PlotFact> Plots { get; init; }

    public required IReadOnlyList<PullFact> Pulls { get; init; }

    public required IReadOnlyList<SampleFact> Samples { get; init; }

    public required IReadOnlyList<ResultFact> Results { get; init; }

    public required IReadOnlyList<ExpectedFact> Expected { get; init; }

    public required IReadOnlyList<FileFact> Files { get; init; }

    public required IReadOnlyList<SourceFact> Sources { get; init; }

    public required IReadOnlyList<ControlFact> Controls { get; init; }

    public required IReadOnlyList<AsideFact> NotInEffect { get; init; }

    public required IReadOnlyList<AlertFact> Alerts { get; init; }

    public required IReadOnlyList<ChangeFact> Changes { get; init; }

    public required IReadOnlyList<ScoreFact> Scores { get; init; }

    public required IReadOnlyList<RepeatabilityFact> Repeatability { get; init; }

    /// <summary>The trial's own limits of results, the newest of each.</summary>
    public required IReadOnlyList<ThresholdFact> Thresholds { get; init; }

    // What older versions of the program did not keep with their reports is empty there.

    /// <summary>Contrasts the trial planned, one coefficient each, in the order of the plan.</summary>
    public IReadOnlyList<ContrastFact> Contrasts { get; init; } = [];

    /// <summary>The laboratory's limits of controls, every version.</summary>
    public IReadOnlyList<ControlLimitRow> ControlLimits { get; init; } = [];

    /// <summary>What the plan expects of every plot at every pull and what became of it, as the view of the season grid has it.</summary>
    public IReadOnlyList<SeasonGridCell> Grid { get; init; } = [];

    /// <summary>Factors in plan order with their levels.</summary>
    public IEnumerable<IGrouping<string, LevelFact>> Factors() => Levels.OrderBy(level => level.Position).GroupBy(level => level.Factor);

    public int DayOf(int pullNo) => Pulls.Single(pull => pull.PullNo == pullNo).DueOn.DayNumber - Trial.HarvestedOn.DayNumber;
}
