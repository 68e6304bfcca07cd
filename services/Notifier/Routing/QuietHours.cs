namespace LabPipeline.Notifier.Routing;

/// <summary>The hours of the local day in which a channel is told only what blocks.</summary>
/// <param name="From">First quiet minute; later than <paramref name="To"/> when the night lies between.</param>
/// <param name="To">First minute that is no longer quiet.</param>
/// <param name="Zone">The laboratory's time zone.</param>
public sealed record QuietHours(TimeOnly From, TimeOnly To, TimeZoneInfo Zone)
{
    /// <summary>When an alert of <paramref name="level"/> may be told: at once, or when the quiet hours end.</summary>
    public DateTimeOffset DueAt(DateTimeOffset now, AlertLevel level)
    {
        var local = TimeZoneInfo.ConvertTime(now, Zone);
        var clock = TimeOnly.FromDateTime(local.DateTime);
        if (level == AlertLevel.Block || !clock.IsBetween(From, To))
        {
            return now;
        }

        var day = DateOnly.FromDateTime(local.DateTime);
        var due = LocalMoment.Of(clock < To ? day : day.AddDays(1), To, Zone);
        return due > now ? due : now;
    }
}
