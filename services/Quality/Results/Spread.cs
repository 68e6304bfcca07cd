namespace LabPipeline.Quality.Results;

/// <summary>Standard deviation with n - 1, from centred squares.</summary>
internal static class Spread
{
    /// <returns>Null for fewer than two values.</returns>
    public static decimal? Of(IReadOnlyCollection<decimal> values)
    {
        if (values.Count < 2)
        {
            return null;
        }

        var mean = values.Average();
        var squares = values.Sum(value => (value - mean) * (value - mean));
        return (decimal)Math.Sqrt((double)(squares / (values.Count - 1)));
    }
}
