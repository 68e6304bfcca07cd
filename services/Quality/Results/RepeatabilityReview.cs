using LabPipeline.Science.Quantities;
using LabPipeline.Science.Repeatability;

namespace LabPipeline.Quality.Results;

/// <summary>The laboratory's own repeatability from the duplicate extracts it has measured.</summary>
/// <remarks>
/// Pairs are sorted by their mean. The lower half gives the constant, s_r = sqrt(sum d² / 2n); the upper half the proportional part,
/// sqrt(sum (d/mean)² / 2n): constant below, relative above, as <see cref="RepeatabilityModel"/> puts them together. Every pair counts,
/// disagreeing ones too: leaving them out would make the limit fit only what it already accepts. A pair spoilt by a known slip is set aside
/// in the warehouse first, with its reason.
/// </remarks>
public static class RepeatabilityReview
{
    /// <summary>Fewer pairs make an estimate provisional (common practice, no source).</summary>
    public const int DependablePairs = 15;

    /// <summary>One pair for each half.</summary>
    public const int FewestPairs = 2;

    /// <summary>The first two extracts of every sample that has two with numbers; further ones were made because these disagreed.</summary>
    public static IReadOnlyList<DuplicatePair> PairsOf(IEnumerable<SampleComputation> samples, Quantity quantity) =>
    [
        .. samples.SelectMany(sample => sample.Agreements)
            .Where(agreement => agreement.Quantity == quantity && agreement.Extracts.Count >= 2)
            .Select(agreement => (First: agreement.Extracts[0].Content.Raw, Second: agreement.Extracts[1].Content.Raw))
            .Where(pair => pair is { First: not null, Second: not null })
            .Select(pair => new DuplicatePair(pair.First!.Value, pair.Second!.Value)),
    ];

    /// <exception cref="ArgumentException">Fewer than two pairs.</exception>
    public static RepeatabilityModel Estimate(Quantity quantity, IReadOnlyCollection<DuplicatePair> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        if (pairs.Count < FewestPairs)
        {
            throw new ArgumentException($"Found {pairs.Count} pairs of duplicates of {quantity.Name}, expected {FewestPairs} or more, {DependablePairs} for a dependable value.", nameof(pairs));
        }

        var sorted = pairs.OrderBy(pair => pair.Mean).ToList();
        var lower = (sorted.Count + 1) / 2;
        var relative = RepeatabilityEstimate.RelativePercentFromPairs(sorted[lower..]).OrNull ?? 0m;
        return new RepeatabilityModel(
            quantity,
            decimal.Round(RepeatabilityEstimate.FromPairs(sorted[..lower]).StandardDeviation, UnitConversion.StoredDecimals),
            decimal.Round(relative / 100m, UnitConversion.StoredDecimals),
            pairs.Count < DependablePairs,
            $"{pairs.Count} pairs of duplicate extracts in the warehouse");
    }
}
