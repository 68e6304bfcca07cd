namespace LabPipeline.Board.Season;

/// <summary>The mean of the plots of one clone and treatment at one pull.</summary>
/// <param name="CloneName">The clone.</param>
/// <param name="Treatment">The treatment.</param>
/// <param name="PullNo">The pull.</param>
/// <param name="Days">Days after harvest on the day the pull was due.</param>
/// <param name="Plots">How many plots it is the mean of.</param>
/// <param name="Mean">Their mean; values below their limit enter with the limit.</param>
/// <param name="StandardError">s / sqrt(plots); null for a single plot.</param>
/// <param name="BelowLimit">How many of the plots lie below their limit.</param>
/// <param name="InDoubt">How many of the plots' results are in doubt; they enter the mean all the same.</param>
public sealed record SeasonMean(
    string CloneName, string Treatment, int PullNo, int Days, int Plots, decimal Mean, double? StandardError, int BelowLimit, int InDoubt)
{
    public string Series => $"{CloneName}, {Treatment}";

    /// <summary>The means behind <paramref name="points"/>, by series and pull.</summary>
    public static IReadOnlyList<SeasonMean> Of(IEnumerable<SeasonPoint> points) =>
    [
        .. points.GroupBy(point => (point.CloneName, point.Treatment, point.PullNo, point.DaysAfterHarvest)).Select(group =>
        {
            var values = group.Select(point => point.Value).ToList();
            return new SeasonMean(
                group.Key.CloneName, group.Key.Treatment, group.Key.PullNo, group.Key.DaysAfterHarvest,
                values.Count, values.Average(), ErrorOf(values), group.Count(point => point.BelowLimit), group.Count(point => point.InDoubt));
        }),
    ];

    private static double? ErrorOf(List<decimal> values)
    {
        if (values.Count < 2)
        {
            return null;
        }

        var mean = values.Average();
        var squares = values.Sum(value => (value - mean) * (value - mean));
        return Math.Sqrt((double)squares / (values.Count - 1) / values.Count);
    }
}
