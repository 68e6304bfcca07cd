using System.Text;
using System.Text.RegularExpressions;
using Ical.Net;
using LabPipeline.Reporting.Planning;

namespace LabPipeline.Reporting.Tests.Planning;

/// <summary>RFC 5545: content lines (3.1), VEVENT (3.6.1), UID and DTSTAMP (3.8.4.7, 3.8.7.2).</summary>
public sealed partial class PullCalendarFileTests
{
    private static readonly DateTimeOffset Now = new(2026, 9, 20, 14, 0, 0, TimeSpan.FromHours(-5));

    private static string Text { get; } = PullCalendarFile.Of([OutlineExample.Plan()], Now);

    [Fact]
    public void Of_APlan_EndsEveryLineWithCarriageReturnAndLineFeed()
    {
        Assert.EndsWith("END:VCALENDAR\r\n", Text, StringComparison.Ordinal);
        Assert.DoesNotMatch(LoneLineEnd(), Text);
    }

    [Fact]
    public void Of_APlan_FoldsLinesAtSeventyFiveOctets()
    {
        var lines = Text.Split("\r\n");

        Assert.All(lines, line => Assert.InRange(Encoding.UTF8.GetByteCount(line), 0, 75));
        Assert.Contains(lines, line => line.StartsWith(' '));
    }

    [Fact]
    public void Of_APlan_GivesEveryEventAUidAndAStampInUtc()
    {
        var lines = Unfolded();
        var uids = lines.Where(line => line.StartsWith("UID:", StringComparison.Ordinal)).ToList();

        Assert.Equal(6, lines.Count(line => line == "BEGIN:VEVENT"));
        Assert.Equal(6, uids.Distinct().Count());
        Assert.Contains("UID:vk-rate-26.2026.pull-2.due@labpipeline.invalid", uids);
        Assert.Equal(6, lines.Count(line => line == "DTSTAMP:20260920T190000Z"));
        Assert.Single(lines, line => line == "VERSION:2.0");
        Assert.Single(lines, line => line == "PRODID:-//LabPipeline//Pull calendar 1//EN");
    }

    [Fact]
    public void Of_APlan_NamesLocalDaysWithoutTimeOrZone()
    {
        var lines = Unfolded();

        Assert.Contains("DTSTART;VALUE=DATE:20261101", lines);
        Assert.Contains("DTEND;VALUE=DATE:20261107", lines);
        Assert.DoesNotContain(lines, line => line.StartsWith("DTSTART", StringComparison.Ordinal) && !line.Contains("VALUE=DATE:", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_APlan_ReadsBackAsItsPulls()
    {
        var calendar = Calendar.Load(Text)!;
        var plan = OutlineExample.Plan();

        foreach (var pull in plan.Pulls)
        {
            var due = calendar.Events.Single(entry => entry.Uid!.Contains($"pull-{pull.Number}.due", StringComparison.Ordinal));
            var window = calendar.Events.Single(entry => entry.Uid!.Contains($"pull-{pull.Number}.window", StringComparison.Ordinal));
            Assert.True(due.IsAllDay && window.IsAllDay);
            Assert.Equal((pull.DueOn, pull.DueOn.AddDays(1)), (due.Start!.Date, due.End!.Date));
            Assert.Equal((pull.OpensOn, pull.ClosesOn.AddDays(1)), (window.Start!.Date, window.End!.Date));
            Assert.Contains($"Day {pull.DueOn.DayNumber - plan.HarvestedOn.DayNumber} after harvest", due.Description!, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Of_TheSamePlanLater_KeepsEveryUid()
    {
        var later = PullCalendarFile.Of([OutlineExample.Plan(change: root => root["pulls"]![1]!["due"] = 49)], Now.AddDays(3));

        Assert.Equal(UidsOf(Text), UidsOf(later));
    }

    [Fact]
    public void Overlaps_OfTwoTrialsOpenAtOnce_AreToldInOneLineEach()
    {
        var second = OutlineExample.Plan(change: root =>
        {
            root["trial"]!["code"] = "VK-RATE-26B";
            root["pulls"]!.AsArray().RemoveAt(2);
            root["pulls"]![1]!["opens"] = 50;
            root["pulls"]![1]!["due"] = 50;
            root["pulls"]![1]!["closes"] = 55;
            root["pulls"]![0]!["opens"] = 24;
            root["pulls"]![0]!["due"] = 24;
            root["pulls"]![0]!["closes"] = 26;
        });

        Assert.Equal(
            "Two pulls are open at once from 2026-11-05 to 2026-11-06: pull 2 of VK-RATE-26 and pull 2 of VK-RATE-26B. Move one, or keep their bags, racks and fry batches apart.",
            Assert.Single(PullOverlap.Of([OutlineExample.Plan(), second])).Explanation);
    }

    private static List<string> Unfolded() => [.. Text.Replace("\r\n ", "", StringComparison.Ordinal).Split("\r\n")];

    private static List<string> UidsOf(string text) => [.. text.Split("\r\n").Where(line => line.StartsWith("UID:", StringComparison.Ordinal))];

    [GeneratedRegex(@"(?<!\r)\n|\r(?!\n)")]
    private static partial Regex LoneLineEnd();
}
