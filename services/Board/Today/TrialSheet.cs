using LabPipeline.Warehouse.Results;

namespace LabPipeline.Board.Today;

/// <summary>A trial as the page of today shows it.</summary>
/// <param name="Trial">The trial.</param>
/// <param name="Today">Today's date where the trial is.</param>
/// <param name="ZoneKnown">False when this computer does not know the trial's time zone and its own date stands in.</param>
/// <param name="Pulls">The trial's pulls.</param>
public sealed record TrialSheet(TrialSpan Trial, DateOnly Today, bool ZoneKnown, IReadOnlyList<PullSheet> Pulls)
{
    /// <summary>Pulls somebody has to do something about: on the bench now, then those that closed with gaps.</summary>
    public IReadOnlyList<PullSheet> Unfinished =>
    [
        .. Pulls.Where(pull => pull.StandingOn(Today) == PullStanding.OnBench),
        .. Pulls.Where(pull => pull.StandingOn(Today) == PullStanding.Gaps),
    ];

    /// <summary>What each unfinished pull still needs, by bay, under the pull's number.</summary>
    public required IReadOnlyDictionary<int, IReadOnlyList<BaySheet>> Bays { get; init; }
}
