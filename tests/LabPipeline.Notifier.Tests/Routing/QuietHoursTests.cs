using System.Globalization;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Tests.Routing;

public sealed class QuietHoursTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    // Clock changes in the European Union: last Sunday of March and October at 01:00 UTC (Directive 2000/84/EC).
    [Theory]
    [InlineData("2026-01-14T12:00Z", "20:00", "06:30", "2026-01-14T12:00Z")]
    [InlineData("2026-01-14T19:00Z", "20:00", "06:30", "2026-01-15T05:30Z")]
    [InlineData("2026-01-14T18:59Z", "20:00", "06:30", "2026-01-14T18:59Z")]
    [InlineData("2026-01-15T05:29Z", "20:00", "06:30", "2026-01-15T05:30Z")]
    [InlineData("2026-01-15T05:30Z", "20:00", "06:30", "2026-01-15T05:30Z")]
    [InlineData("2026-07-14T20:00Z", "20:00", "06:30", "2026-07-15T04:30Z")]
    [InlineData("2026-01-14T11:15Z", "12:00", "13:00", "2026-01-14T12:00Z")]
    [InlineData("2026-03-28T20:00Z", "20:00", "06:30", "2026-03-29T04:30Z")]
    [InlineData("2026-03-28T20:00Z", "20:00", "02:30", "2026-03-29T01:30Z")]
    [InlineData("2026-10-24T20:00Z", "20:00", "06:30", "2026-10-25T05:30Z")]
    public void DueAt_WhenItIsNotABlock_WaitsForTheLocalMorning(string now, string from, string to, string expected) =>
        Assert.Equal(Instant(expected), Quiet(from, to).DueAt(Instant(now), AlertLevel.Hold));

    [Fact]
    public void DueAt_WhenItBlocks_IsNeverHeld() =>
        Assert.Equal(Instant("2026-01-14T23:00Z"), Quiet("20:00", "06:30").DueAt(Instant("2026-01-14T23:00Z"), AlertLevel.Block));

    private static QuietHours Quiet(string from, string to) =>
        new(TimeOnly.Parse(from, CultureInfo.InvariantCulture), TimeOnly.Parse(to, CultureInfo.InvariantCulture), Berlin);

    private static DateTimeOffset Instant(string text) => DateTimeOffset.Parse(text, CultureInfo.InvariantCulture);
}
