using LabPipeline.Science.Units;

namespace LabPipeline.Science.Repeatability;

/// <summary>Checks results of one sample obtained under repeatability conditions and gives the final result, or asks for more.</summary>
/// <remarks>
/// Two results: range at most 2.8 s_r, mean. Otherwise, inexpensive: two more; range of 4 at most 3.6 s_r, mean of 4, else median of 4.
/// Expensive: one more; range of 3 at most 3.3 s_r, mean of 3, else one more; range of 4 at most 3.6 s_r, mean of 4, else median of 4; where no
/// fourth can be had, the middle of the three. Equality is agreement, so everything is decimal. No result is ever left out to make the rest agree.
/// Source: ISO 5725-6:1994, 5.2 (from memory), factors f(n) of its table 1.
/// </remarks>
public sealed class AcceptabilityCheck
{
    private const int Most = 4;

    private readonly decimal _repeatabilitySd;
    private readonly RepeatCost _cost;

    /// <param name="repeatabilitySd">Repeatability standard deviation s_r at the level of the results, in their unit, above zero.</param>
    /// <param name="cost">Which form of the procedure.</param>
    /// <exception cref="ArgumentOutOfRangeException">s_r of zero or less, or an unknown form.</exception>
    public AcceptabilityCheck(decimal repeatabilitySd, RepeatCost cost)
    {
        _repeatabilitySd = Require.Positive(repeatabilitySd, nameof(repeatabilitySd));
        _cost = Enum.IsDefined(cost) ? cost : throw new ArgumentOutOfRangeException(nameof(cost), $"Found {cost}, expected inexpensive or expensive.");
    }

    /// <summary>Decides from the results so far.</summary>
    /// <param name="results">Two to four results in one unit, in the order they were obtained: the procedure stops at the first agreement, whatever came after.</param>
    /// <param name="moreAvailable">False when no further result can be had.</param>
    /// <exception cref="ArgumentException">Fewer than two or more than four results.</exception>
    public AcceptabilityDecision Decide(IReadOnlyList<decimal> results, bool moreAvailable = true)
    {
        ArgumentNullException.ThrowIfNull(results);
        if (results.Count is < 2 or > Most)
        {
            throw new ArgumentException($"Found {results.Count} results, expected two to four in the order they were obtained.", nameof(results));
        }

        var steps = new List<AcceptabilityStep>();
        foreach (var count in Stages().TakeWhile(count => count <= results.Count))
        {
            var step = Compare(results.Take(count));
            steps.Add(step);
            if (step.Agrees)
            {
                return Final(AcceptabilityOutcome.Mean, results.Take(count), steps);
            }
        }

        return results.Count == Most
            ? Final(AcceptabilityOutcome.Median, results, steps)
            : Unsettled(results, moreAvailable, steps);
    }

    private int[] Stages() => _cost == RepeatCost.Inexpensive ? [2, 4] : [2, 3, 4];

    private AcceptabilityStep Compare(IEnumerable<decimal> results)
    {
        var list = results.ToList();
        var factor = CriticalRange.PublishedFactor(list.Count);
        return new AcceptabilityStep(list.Count, list.Max() - list.Min(), factor, factor * _repeatabilitySd);
    }

    private AcceptabilityDecision Unsettled(IReadOnlyList<decimal> results, bool moreAvailable, List<AcceptabilityStep> steps)
    {
        if (moreAvailable)
        {
            var more = Stages().First(stage => stage > results.Count) - results.Count;
            return new(AcceptabilityOutcome.ObtainMore, null, results.Count, more, $"obtain {more} more result{(more == 1 ? "" : "s")}", steps);
        }

        return _cost == RepeatCost.Expensive && results.Count == 3
            ? Final(AcceptabilityOutcome.Median, results, steps)
            : new(AcceptabilityOutcome.Unresolved, null, results.Count, 0, $"no rule for {results.Count} disagreeing results without more", steps);
    }

    private static AcceptabilityDecision Final(AcceptabilityOutcome outcome, IEnumerable<decimal> results, List<AcceptabilityStep> steps)
    {
        var sorted = results.Order().ToList();
        var (value, name) = outcome == AcceptabilityOutcome.Mean
            ? (sorted.Average(), "mean")
            : ((sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2m, "median");
        return new(outcome, value, sorted.Count, 0, $"{name} of {sorted.Count}", steps);
    }
}
