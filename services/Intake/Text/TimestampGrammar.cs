using NodaTime;
using NodaTime.TimeZones;

namespace LabPipeline.Intake.Text;

/// <summary>Reads local times of one source into instants: declared patterns, one declared zone, no guess at a clock change.</summary>
/// <remarks>Remembers the zone interval of the last reading, since neighbouring rows nearly always share it; use one per file and thread.</remarks>
public sealed class TimestampGrammar(IReadOnlyList<TimestampPattern> patterns, DateTimeZone zone, AmbiguousTime ambiguous)
{
    // No zone has ever moved its clocks by a whole day except across the date line; inside this margin the interval is looked up afresh.
    private static readonly TimeSpan Margin = TimeSpan.FromHours(26);

    private DateTime _sureFrom = DateTime.MaxValue;
    private DateTime _sureTo = DateTime.MinValue;
    private TimeSpan _sureOffset;

    /// <summary>The instant (UTC) <paramref name="text"/> stands for.</summary>
    public TimestampFault Parse(ReadOnlySpan<char> text, out DateTimeOffset instant)
    {
        instant = default;
        for (var index = 0; index < patterns.Count; index++)
        {
            if (patterns[index].TryRead(text, out var fields))
            {
                return ToInstant(fields, out instant);
            }
        }

        return TimestampFault.NotInFormat;
    }

    private TimestampFault ToInstant(in LocalFields fields, out DateTimeOffset instant)
    {
        instant = default;
        if (!fields.TryGetLocal(out var local))
        {
            return TimestampFault.Impossible;
        }

        if (fields.HasOffset)
        {
            instant = new DateTimeOffset(local - TimeSpan.FromMinutes(fields.OffsetMinutes), TimeSpan.Zero);
            return TimestampFault.None;
        }

        if (local >= _sureFrom && local <= _sureTo)
        {
            instant = new DateTimeOffset(local - _sureOffset, TimeSpan.Zero);
            return TimestampFault.None;
        }

        return Map(local, out instant);
    }

    private TimestampFault Map(DateTime local, out DateTimeOffset instant)
    {
        instant = default;
        var mapping = zone.MapLocal(LocalDateTime.FromDateTime(local));
        switch (mapping.Count)
        {
            case 0:
                return TimestampFault.Skipped;
            case 2 when ambiguous == AmbiguousTime.Refuse:
                return TimestampFault.Ambiguous;
            case 2:
                instant = (ambiguous == AmbiguousTime.Earlier ? mapping.First() : mapping.Last()).ToInstant().ToDateTimeOffset();
                return TimestampFault.None;
            default:
                instant = mapping.Single().ToInstant().ToDateTimeOffset();
                Remember(mapping.EarlyInterval);
                return TimestampFault.None;
        }
    }

    private void Remember(ZoneInterval interval)
    {
        _sureFrom = interval.HasStart && interval.IsoLocalStart.Year >= 2 ? interval.IsoLocalStart.ToDateTimeUnspecified() + Margin : DateTime.MinValue;
        _sureTo = interval.HasEnd && interval.IsoLocalEnd.Year <= 9998 ? interval.IsoLocalEnd.ToDateTimeUnspecified() - Margin : DateTime.MaxValue;
        _sureOffset = interval.WallOffset.ToTimeSpan();
    }
}
