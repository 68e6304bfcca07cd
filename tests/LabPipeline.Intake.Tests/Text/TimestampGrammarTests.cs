using LabPipeline.Intake.Text;
using NodaTime;

namespace LabPipeline.Intake.Tests.Text;

/// <summary>Clock changes from the IANA time zone database (shipped with NodaTime); calendar rules are those of the Gregorian calendar.</summary>
public sealed class TimestampGrammarTests
{
    // Zone; last second before the gap, a second in it, first after it; a second that happened twice, as its two instants.
    [Theory]
    [Shows(23)]
    [InlineData("Europe/Berlin", "2026-03-29 01:59:59", "2026-03-29T00:59:59Z", "2026-03-29 02:00:00", "2026-03-29 03:00:00", "2026-03-29T01:00:00Z")]
    [InlineData("America/Chicago", "2026-03-08 01:59:59", "2026-03-08T07:59:59Z", "2026-03-08 02:30:00", "2026-03-08 03:00:00", "2026-03-08T08:00:00Z")]
    [InlineData("Australia/Lord_Howe", "2026-10-04 01:59:59", "2026-10-03T15:29:59Z", "2026-10-04 02:15:00", "2026-10-04 02:30:00", "2026-10-03T15:30:00Z")]
    public void Parse_WhenClocksWerePutForward_RefusesTheSkippedTime(
        string zone, string before, string beforeInstant, string skipped, string after, string afterInstant)
    {
        var grammar = Grammar(zone, AmbiguousTime.Refuse);

        Assert.Equal(beforeInstant, Read(grammar, before));
        Assert.Equal("Skipped", Read(grammar, skipped));
        Assert.Equal(afterInstant, Read(grammar, after));
    }

    [Theory]
    [Shows(23)]
    [InlineData("Europe/Berlin", "2026-10-25 02:30:00", "2026-10-25T00:30:00Z", "2026-10-25T01:30:00Z")]
    [InlineData("America/Chicago", "2026-11-01 01:30:00", "2026-11-01T06:30:00Z", "2026-11-01T07:30:00Z")]
    [InlineData("Australia/Lord_Howe", "2026-04-05 01:45:00", "2026-04-04T14:45:00Z", "2026-04-04T15:15:00Z")]
    public void Parse_WhenTimeHappenedTwice_FollowsTheProfile(string zone, string text, string earlier, string later)
    {
        Assert.Equal("Ambiguous", Read(Grammar(zone, AmbiguousTime.Refuse), text));
        Assert.Equal(earlier, Read(Grammar(zone, AmbiguousTime.Earlier), text));
        Assert.Equal(later, Read(Grammar(zone, AmbiguousTime.Later), text));
    }

    // The reader remembers the interval of the row before; every half hour of two years must agree with a fresh look-up.
    [Theory]
    [InlineData("Europe/Berlin")]
    [InlineData("America/Chicago")]
    [InlineData("Australia/Lord_Howe")]
    public void Parse_WhenRowsFollowEachOther_AgreesWithTheZoneItself(string name)
    {
        var zone = DateTimeZoneProviders.Tzdb[name];
        var grammar = Grammar(name, AmbiguousTime.Refuse);
        for (var local = new LocalDateTime(2025, 1, 1, 0, 0); local.Year < 2027; local = local.PlusMinutes(30))
        {
            var mapping = zone.MapLocal(local);
            var expected = mapping.Count switch
            {
                0 => "Skipped",
                1 => mapping.Single().ToInstant().ToString("uuuu-MM-dd'T'HH:mm:ss'Z'", null),
                _ => "Ambiguous",
            };
            Assert.Equal(expected, Read(grammar, local.ToString("uuuu-MM-dd HH:mm:ss", null)));
        }
    }

    [Theory]
    [InlineData("2024-02-29 12:00:00", "2024-02-29T12:00:00Z")]
    [InlineData("2026-02-29 12:00:00", "Impossible")]
    [InlineData("1900-02-28 12:00:00", "1900-02-28T12:00:00Z")]
    [InlineData("1900-02-29 12:00:00", "Impossible")]
    [InlineData("2000-02-29 12:00:00", "2000-02-29T12:00:00Z")]
    [InlineData("2100-02-29 12:00:00", "Impossible")]
    [InlineData("2100-02-28 12:00:00", "2100-02-28T12:00:00Z")]
    [InlineData("2026-04-31 12:00:00", "Impossible")]
    [InlineData("2026-13-01 12:00:00", "Impossible")]
    [InlineData("2026-00-01 12:00:00", "Impossible")]
    [InlineData("2026-01-00 12:00:00", "Impossible")]
    [InlineData("2026-01-01 24:00:00", "Impossible")]
    [InlineData("2026-01-01 12:60:00", "Impossible")]
    [InlineData("2026-06-30 23:59:60", "Impossible")]
    [InlineData("1899-12-31 12:00:00", "Impossible")]
    [InlineData("2200-01-01 00:00:00", "Impossible")]
    [InlineData("0001-01-01 00:00:00", "Impossible")]
    [InlineData("26-01-14 08:30:00", "NotInFormat")]
    [InlineData("2026-1-14 08:30:00", "NotInFormat")]
    [InlineData("2026/01/14 08:30:00", "NotInFormat")]
    [InlineData("2026-01-14T08:30:00", "NotInFormat")]
    [InlineData("2026-01-14 08:30", "NotInFormat")]
    [InlineData("2026-01-14 08:30:00 ", "NotInFormat")]
    [InlineData("2026-01-14 08:30:00Z", "NotInFormat")]
    [InlineData("2026-01-14  8:30:00", "NotInFormat")]
    [InlineData("\u0662\u0660\u0662\u0666-01-14 08:30:00", "NotInFormat")]
    [InlineData("", "NotInFormat")]
    public void Parse_WhenDateIsAtTheEdge_IsExactOrRefused(string text, string expected) =>
        Assert.Equal(expected, Read(Grammar("UTC", AmbiguousTime.Refuse), text));

    [Fact]
    [Shows(23)]
    public void Parse_WhenMonthAndDayCouldBeSwapped_FollowsTheDeclaredOrder()
    {
        Assert.Equal("2026-04-03T10:00:00Z", Read(Grammar("UTC", AmbiguousTime.Refuse, "dd/MM/yyyy HH:mm"), "03/04/2026 10:00"));
        Assert.Equal("2026-03-04T10:00:00Z", Read(Grammar("UTC", AmbiguousTime.Refuse, "MM/dd/yyyy HH:mm"), "03/04/2026 10:00"));
    }

    [Theory]
    [InlineData("yyyy-MM-ddTHH:mm:sszzz", "2026-03-03T04:30:00+01:00", "2026-03-03T03:30:00Z")]
    [InlineData("yyyy-MM-ddTHH:mm:sszzz", "2026-03-03T04:30:00-0530", "2026-03-03T10:00:00Z")]
    [InlineData("yyyy-MM-ddTHH:mm:sszzz", "2026-03-03T04:30:00Z", "2026-03-03T04:30:00Z")]
    [InlineData("yyyy-MM-ddTHH:mm:sszzz", "2026-03-03T04:30:00", "NotInFormat")]
    [InlineData("yyyy-MM-ddTHH:mm:sszzz", "2026-03-03T04:30:00+01", "NotInFormat")]
    [InlineData("yyyy-MM-ddTHH:mm:sszzz", "2026-03-03T04:30:00+15:00", "Impossible")]
    [InlineData("yyyy-MM-ddTHH:mm:ssZ", "2026-03-03T04:30:00Z", "2026-03-03T04:30:00Z")]
    [InlineData("yyyy-MM-ddTHH:mm:ssZ", "2026-03-03T04:30:00+00:00", "NotInFormat")]
    [InlineData("yyyyMMddHHmmss", "20260303043000", "2026-03-03T10:30:00Z")]
    [InlineData("M/d/yyyy H:mm", "3/3/2026 4:30", "2026-03-03T10:30:00Z")]
    [InlineData("M/d/yyyy H:mm", "03/03/2026 04:30", "2026-03-03T10:30:00Z")]
    public void Parse_WhenFormatIsDeclared_ReadsJustThat(string format, string text, string expected) =>
        Assert.Equal(expected, Read(Grammar("America/Chicago", AmbiguousTime.Refuse, format), text));

    [Theory]
    [InlineData("2026-01-14 08:30:00", 0)]
    [InlineData("2026-01-14 08:30:00.5", 5_000_000)]
    [InlineData("2026-01-14 08:30:00.1234567", 1_234_567)]
    public void Parse_WhenFractionIsOptional_KeepsAllOfIt(string text, int ticks)
    {
        Assert.Equal(TimestampFault.None, Grammar("UTC", AmbiguousTime.Refuse, "yyyy-MM-dd HH:mm:ss.f").Parse(text, out var instant));
        Assert.Equal(ticks, instant.Ticks % TimeSpan.TicksPerSecond);
    }

    [Theory]
    [InlineData("2026-01-14 08:30:00.")]
    [InlineData("2026-01-14 08:30:00.12345678")]
    [InlineData("2026-01-14 08:30:00,5")]
    public void Parse_WhenFractionIsNotAsDeclared_Refuses(string text) =>
        Assert.Equal(TimestampFault.NotInFormat, Grammar("UTC", AmbiguousTime.Refuse, "yyyy-MM-dd HH:mm:ss.f").Parse(text, out _));

    [Theory]
    [InlineData("th-TH")]
    [InlineData("ar-SA")]
    [InlineData("de-DE")]
    public void Parse_WhenCultureHasAnotherCalendar_IsTheSame(string culture)
    {
        using var _ = new InCulture(culture);

        Assert.Equal(TimestampFault.None, Grammar("UTC", AmbiguousTime.Refuse).Parse("2026-01-14 08:30:00", out var instant));
        Assert.Equal(new DateTimeOffset(2026, 1, 14, 8, 30, 0, TimeSpan.Zero), instant);
    }

    [Theory]
    [InlineData("yy-MM-dd HH:mm", "'yy-M' at position 1 is no part of a pattern")]
    [InlineData("yyyy-MM-dd", "the hour is missing")]
    [InlineData("yyyy-MM HH:mm", "the day is missing")]
    [InlineData("yyyy-MM-dd HH:mm MM", "the month stands in it twice")]
    [InlineData("yyyy-MMM-dd HH:mm", "'MMM-' at position 6 is no part of a pattern")]
    [InlineData("yyyy-MM-dd hh:mm tt", "'hh:m' at position 12 is no part of a pattern")]
    [InlineData("", "the year is missing")]
    public void Compile_WhenPatternIsNotComplete_SaysWhy(string pattern, string expected)
    {
        Assert.Null(TimestampPattern.Compile(pattern, out var fault));
        Assert.Equal(expected, fault);
    }

    private static TimestampGrammar Grammar(string zone, AmbiguousTime ambiguous, string format = "yyyy-MM-dd HH:mm:ss") =>
        new([TimestampPattern.Compile(format, out _)!], DateTimeZoneProviders.Tzdb[zone], ambiguous);

    private static string Read(TimestampGrammar grammar, string text)
    {
        var fault = grammar.Parse(text, out var instant);
        return fault == TimestampFault.None
            ? instant.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture)
            : fault.ToString();
    }
}
