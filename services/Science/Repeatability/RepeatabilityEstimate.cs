using LabPipeline.Science.Units;

namespace LabPipeline.Science.Repeatability;

/// <summary>A repeatability standard deviation with its degrees of freedom.</summary>
/// <param name="StandardDeviation">s_r in the unit of the results (or in % when pooled relatively), zero or more.</param>
/// <param name="DegreesOfFreedom">1 or more; below about 15 the estimate is provisional.</param>
public sealed record RepeatabilityEstimate(decimal StandardDeviation, int DegreesOfFreedom)
{
    /// <summary>Published factor between s_r and r (f(2) of ISO 5725-6).</summary>
    public const decimal LimitFactor = 2.8m;

    /// <summary>Repeatability limit r = 2.8 s_r: two results differ by more one time in twenty. Source: ISO 5725-6:1994, 4.1.4 (from memory).</summary>
    public decimal Limit => LimitFactor * StandardDeviation;

    /// <summary>r with the unrounded factor 1.959964 sqrt 2 = 2.771808.</summary>
    public decimal UnroundedLimit => 1.959963985m * DecimalRoot.Sqrt(2m) * StandardDeviation;

    /// <summary>s_r = sqrt(sum d² / 2n), n degrees of freedom.</summary>
    /// <param name="pairs">One or more pairs at one level of the measurand.</param>
    /// <exception cref="ArgumentException">No pairs.</exception>
    public static RepeatabilityEstimate FromPairs(IReadOnlyCollection<DuplicatePair> pairs)
    {
        RequireSome(pairs);
        return new(DecimalRoot.Sqrt(pairs.Sum(pair => pair.AbsoluteDifference * pair.AbsoluteDifference) / (2m * pairs.Count)), pairs.Count);
    }

    /// <summary>Relative s_r in % = 100 sqrt(sum (d/mean)² / 2n), n degrees of freedom; for levels where s_r grows with the mean.</summary>
    /// <returns>Not estimable when a pair's mean is not above zero.</returns>
    /// <exception cref="ArgumentException">No pairs.</exception>
    public static Estimable<decimal> RelativePercentFromPairs(IReadOnlyCollection<DuplicatePair> pairs)
    {
        RequireSome(pairs);
        if (pairs.Any(pair => !pair.RelativePercentDifference.IsEstimated))
        {
            return Estimable<decimal>.Not("the mean of a pair is not above zero");
        }

        var squares = pairs.Sum(pair => pair.RelativePercentDifference.Value * pair.RelativePercentDifference.Value);
        return DecimalRoot.Sqrt(squares / (2m * pairs.Count));
    }

    /// <summary>Mean of |d| over the pairs: the centre line of a range chart of duplicates, in the unit of the results.</summary>
    /// <exception cref="ArgumentException">No pairs.</exception>
    public static decimal MeanAbsoluteDifference(IReadOnlyCollection<DuplicatePair> pairs)
    {
        RequireSome(pairs);
        return pairs.Average(pair => pair.AbsoluteDifference);
    }

    private static void RequireSome(IReadOnlyCollection<DuplicatePair> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        if (pairs.Count == 0)
        {
            throw new ArgumentException("Found no duplicate pairs, expected at least one (15 to 20 for a dependable estimate).", nameof(pairs));
        }
    }
}
