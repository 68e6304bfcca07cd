using NodaTime;

namespace LabPipeline.Quality.Rules;

/// <summary>Calendar dates as a trial means them: in its own time zone, summer time included.</summary>
public static class TrialCalendar
{
    public static bool Exists(string timeZone) => DateTimeZoneProviders.Tzdb.GetZoneOrNull(timeZone) is not null;

    /// <exception cref="InvalidOperationException">No zone has this name.</exception>
    public static DateOnly DateOf(DateTimeOffset instant, string timeZone)
    {
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(timeZone)
            ?? throw new InvalidOperationException($"found the time zone '{timeZone}' in the trial, expected an IANA name such as America/Chicago");
        return Instant.FromDateTimeOffset(instant).InZone(zone).Date.ToDateOnly();
    }
}
