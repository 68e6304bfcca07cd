namespace LabPipeline.Notifier.Routing;

/// <summary>The instant of a local clock time.</summary>
internal static class LocalMoment
{
    /// <remarks>An hour that the clock change skips is read as it would have been before the change; one that comes twice, as its second coming.</remarks>
    public static DateTimeOffset Of(DateOnly day, TimeOnly clock, TimeZoneInfo zone)
    {
        var local = day.ToDateTime(clock);
        var offset = zone.IsInvalidTime(local) ? zone.GetUtcOffset(local.AddHours(-1)) : zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset).ToUniversalTime();
    }
}
