using System.Globalization;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Tests.Routing;

public sealed class DailyDigestTests
{
    private static readonly DailyDigest HalfPastFour = new(new TimeOnly(16, 30), TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin"));

    // Clock changes in the European Union: last Sunday of March and October at 01:00 UTC (Directive 2000/84/EC).
    [Theory]
    [InlineData("2026-01-14T09:00Z", "2026-01-14T15:30Z")]
    [InlineData("2026-01-14T15:30Z", "2026-01-15T15:30Z")]
    [InlineData("2026-03-28T16:00Z", "2026-03-29T14:30Z")]
    [InlineData("2026-10-24T16:00Z", "2026-10-25T15:30Z")]
    [InlineData("2026-01-14T23:30Z", "2026-01-15T15:30Z")]
    public void NextAfter_WhenItIsNotABlock_IsTheNextLocalHour(string now, string expected) =>
        Assert.Equal(Instant(expected), HalfPastFour.NextAfter(Instant(now), AlertLevel.Note));

    [Fact]
    public void NextAfter_WhenItBlocks_IsNull() => Assert.Null(HalfPastFour.NextAfter(Instant("2026-01-14T09:00Z"), AlertLevel.Block));

    [Fact]
    public void NextAfter_WhenTheDigestIsAboutToBeMade_IsNull() =>
        Assert.Null(HalfPastFour.NextAfter(Instant("2026-01-14T15:29:30Z"), AlertLevel.Hold));

    [Fact]
    public void NextAfter_WhenTheClockSkipsTheHour_ReadsItAsBeforeTheChange()
    {
        var digest = HalfPastFour with { At = new TimeOnly(2, 30) };

        Assert.Equal(Instant("2026-03-29T01:30Z"), digest.NextAfter(Instant("2026-03-28T20:00Z"), AlertLevel.Hold));
    }

    [Fact]
    public void DayOf_WhenUtcIsStillTheDayBefore_IsTheLocalDay() =>
        Assert.Equal(new DateOnly(2026, 1, 15), HalfPastFour.DayOf(Instant("2026-01-14T23:30Z")));

    private static DateTimeOffset Instant(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
}
