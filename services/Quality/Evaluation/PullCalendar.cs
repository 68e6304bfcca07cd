using LabPipeline.Quality.Rules;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Which pulls a look has to evaluate: those whose local date moved on since the last look, and those whose readings were touched.</summary>
internal static class PullCalendar
{
    /// <param name="pulls">Every planned pull.</param>
    /// <param name="lastDates">Local date at the last evaluation, by pull; kept up to date here.</param>
    /// <param name="isTouched">Whether a pull's readings or plan changed since the last look.</param>
    /// <param name="now">The instant of the look.</param>
    public static IReadOnlyList<PlannedPull> Due(
        IEnumerable<PlannedPull> pulls, Dictionary<PullKey, DateOnly?> lastDates, Func<PullKey, bool> isTouched, DateTimeOffset now)
    {
        var due = new List<PlannedPull>();
        foreach (var pull in pulls)
        {
            var today = DateIn(pull, now);
            var moved = !lastDates.TryGetValue(pull.Key, out var last) || last != today;
            var started = today is null || today >= pull.DueOn;
            if (isTouched(pull.Key) || (moved && started))
            {
                due.Add(pull);
                lastDates[pull.Key] = today;
            }
        }

        return due;
    }

    /// <summary>Null when the trial's time zone does not exist; the rules then say that they could not be evaluated.</summary>
    private static DateOnly? DateIn(PlannedPull pull, DateTimeOffset now)
    {
        try
        {
            return TrialCalendar.DateOf(now, pull.TimeZone);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
