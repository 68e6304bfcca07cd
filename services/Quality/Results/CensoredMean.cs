using LabPipeline.Science.Units;

namespace LabPipeline.Quality.Results;

/// <summary>Mean of results some of which may lie below a quantitation limit; nothing is put in their place.</summary>
internal static class CensoredMean
{
    /// <summary>Where every result has a number, their mean against the largest limit; otherwise the interval or limit that the results allow.</summary>
    public static LabResult Of(IReadOnlyList<LabResult> results)
    {
        if (results.All(result => result.Raw is not null))
        {
            return LabResult.Of(results.Average(result => result.Raw!.Value), LargestLimit(results));
        }

        return results.All(result => result.Kind == ResultKind.BelowLimit && result.Raw is null)
            ? LabResult.Below(LargestLimit(results)!.Value)
            : LabResult.Between(results.Average(Lowest), results.Average(Highest));
    }

    public static decimal? LargestLimit(IEnumerable<LabResult> results) => results.Max(result => result.Limit);

    /// <summary>The number where there is one, else the lowest value possible.</summary>
    public static decimal Lowest(LabResult result) => result.Raw ?? result.Low;

    /// <summary>The number where there is one, else the highest value possible.</summary>
    public static decimal Highest(LabResult result) => result.Raw ?? result.High;
}
