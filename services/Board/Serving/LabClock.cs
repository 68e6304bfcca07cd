using System.Globalization;

namespace LabPipeline.Board.Serving;

/// <summary>Instants as this computer's clock shows them, and today's date where a trial is.</summary>
internal sealed class LabClock(TimeProvider time)
{
    /// <summary>Distance of this computer's clock from UTC, such as <c>UTC+01:00</c>.</summary>
    public string Offset
    {
        get
        {
            var offset = time.LocalTimeZone.GetUtcOffset(time.GetUtcNow());
            return (offset < TimeSpan.Zero ? "UTC-" : "UTC+") + offset.ToString(@"hh\:mm", CultureInfo.InvariantCulture);
        }
    }

    public string Text(DateTimeOffset instant) =>
        TimeZoneInfo.ConvertTime(instant, time.LocalTimeZone).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    public static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public DateTimeOffset Instant => time.GetUtcNow();

    public string Now() => Text(time.GetUtcNow());

    /// <summary>Today in an IANA time zone; null when this computer does not know the zone.</summary>
    public DateOnly? TodayIn(string timeZone) => TimeZoneInfo.TryFindSystemTimeZoneById(timeZone, out var zone)
        ? DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time.GetUtcNow(), zone).DateTime)
        : null;

    public DateOnly TodayHere() => DateOnly.FromDateTime(time.GetLocalNow().DateTime);
}
