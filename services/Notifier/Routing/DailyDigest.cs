namespace LabPipeline.Notifier.Routing;

/// <summary>The local hour at which a channel is told, in one message, whatever does not block.</summary>
public sealed record DailyDigest(TimeOnly At, TimeZoneInfo Zone)
{
    // A digest takes what was written down before it is claimed; what comes this close to it goes by itself.
    private static readonly TimeSpan Closing = TimeSpan.FromMinutes(1);

    /// <summary>The digest that an alert raised at <paramref name="now"/> waits for; null when the alert is told by itself.</summary>
    public DateTimeOffset? NextAfter(DateTimeOffset now, AlertLevel level)
    {
        if (level == AlertLevel.Block)
        {
            return null;
        }

        var day = DayOf(now);
        var today = LocalMoment.Of(day, At, Zone);
        if (now >= today)
        {
            return LocalMoment.Of(day.AddDays(1), At, Zone);
        }

        return today - now > Closing ? today : null;
    }

    /// <summary>The bench day an instant belongs to.</summary>
    public DateOnly DayOf(DateTimeOffset instant) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, Zone).DateTime);
}
