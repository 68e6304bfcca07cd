using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Board.Today;

/// <summary>One pull of a trial: its days, what is measured of what was planned, and its open alerts by level.</summary>
public sealed record PullSheet
{
    public required int Number { get; init; }

    public required DateOnly DueOn { get; init; }

    public required DateOnly OpensOn { get; init; }

    public required DateOnly ClosesOn { get; init; }

    public required IReadOnlyList<PullProgress> Quantities { get; init; }

    public required IReadOnlyDictionary<string, int> AlertsByLevel { get; init; }

    public int Samples => Quantities.Max(row => row.SamplesPlanned);

    public int QuantitiesComplete => Quantities.Count(row => row.SamplesMeasured >= row.SamplesPlanned);

    /// <summary>The pulls behind <paramref name="progress"/>, all of trial <paramref name="trialCode"/>, in their order.</summary>
    public static IReadOnlyList<PullSheet> Of(string trialCode, IEnumerable<PullProgress> progress, IReadOnlyCollection<AlertCount> alerts) =>
    [
        .. progress.GroupBy(row => row.PullNo).OrderBy(pull => pull.Key).Select(pull => new PullSheet
        {
            Number = pull.Key,
            DueOn = pull.First().DueOn,
            OpensOn = pull.First().OpensOn,
            ClosesOn = pull.First().ClosesOn,
            Quantities = [.. pull],
            AlertsByLevel = alerts.Where(alert => alert.TrialCode == trialCode && alert.PullNo == pull.Key)
                .GroupBy(alert => alert.Level).ToDictionary(level => level.Key, level => level.Sum(alert => alert.Alerts)),
        }),
    ];

    public PullStanding StandingOn(DateOnly today)
    {
        if (QuantitiesComplete == Quantities.Count)
        {
            return PullStanding.Complete;
        }

        return today < OpensOn ? PullStanding.ToCome : today <= ClosesOn ? PullStanding.OnBench : PullStanding.Gaps;
    }
}
