using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Reporting.Season.Keeping;

/// <summary>How long means stay within their limits, by inverse prediction.</summary>
/// <remarks>
/// Means of the whole-season model are joined by straight lines on the scale of analysis. The day is where that line first passes the limit; its
/// interval holds the days whose pointwise confidence band contains the limit, that is from the first day the band's worse side passes it to the
/// first day its better side does. Nothing is extrapolated: what does not happen between the first and the last pull is censored there.
/// A value on the limit is within it.
/// </remarks>
internal static class KeepingTimes
{
    public static IReadOnlyList<KeepingTime> Of(IReadOnlyList<Trajectory> trajectories, double limitOnScale, bool highIsBad, double alpha) =>
        [.. trajectories.Where(one => one.Points.Count > 0).Select(one => Of(one, limitOnScale, highIsBad, alpha))];

    private static KeepingTime Of(Trajectory trajectory, double limit, bool highIsBad, double alpha)
    {
        var points = trajectory.Points;
        int[] days = [.. points.Select(point => point.Day)];
        double[] excess = [.. points.Select(point => (highIsBad ? 1 : -1) * (point.Mean - limit))];
        double[] half = [.. points.Select(point => StudentT.UpperQuantile(alpha / 2, point.Df) * point.StandardError)];
        var day = FirstCrossing(days, excess);
        var earliest = FirstCrossing(days, [.. excess.Zip(half, (e, h) => e + h)]);
        var latest = FirstCrossing(days, [.. excess.Zip(half, (e, h) => e - h)]);
        var firstOut = Array.FindIndex(excess, value => value > 0);
        return new KeepingTime(
            trajectory.Label,
            firstOut == 0 ? KeepingState.OutFromTheStart : day is null ? KeepingState.NotReached : KeepingState.Crossed,
            firstOut == 0 ? null : day,
            // A band that never touches the limit says only that it happens after the last pull.
            earliest is null ? days[^1] : earliest > days[0] ? earliest : null,
            latest,
            days[0],
            days[^1],
            firstOut >= 0 && excess.Skip(firstOut).Any(value => value <= 0));
    }

    /// <summary>First day the line through the points rises above zero; null when it never does.</summary>
    private static double? FirstCrossing(int[] days, double[] excess)
    {
        for (var index = 0; index < days.Length; index++)
        {
            if (excess[index] > 0)
            {
                return index == 0 ? days[0] : days[index - 1] + ((days[index] - days[index - 1]) * -excess[index - 1] / (excess[index] - excess[index - 1]));
            }
        }

        return null;
    }
}
