using System.Net;
using System.Text.RegularExpressions;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Tests.Doubles;

namespace LabPipeline.Notifier.Tests.Messages;

public sealed partial class AlertLetterTests
{
    [Fact]
    public void Write_OfATest_SaysThatNothingHappenedAndWhoAsked()
    {
        var notice = new TestNotice { Id = "0123", At = Samples.Alert.At, Channel = "email:lab", AskedBy = "some.one" };

        var letter = AlertLetter.Write(notice, null);

        Assert.Equal("[test] The channel email:lab reaches you", letter.Subject);
        Assert.Contains("some.one asked at 2026-01-14 09:00 UTC whether this channel works. It does. Nothing has happened in the laboratory.", letter.Text, StringComparison.Ordinal);
        Assert.Equal(
            """{"type":"channel.test","timestamp":"2026-01-14T09:00:00.000Z","data":{"id":"0123","channel":"email:lab","askedBy":"some.one"}}""",
            System.Text.Encoding.UTF8.GetString(NoticeJson.Write(notice)));
    }

    [Fact]
    public void Write_WhenAnAlertIsRaised_SaysEverythingOnePersonNeeds()
    {
        var letter = AlertLetter.Write(Samples.Alert, "https://board.lab.example");

        Assert.Equal("[hold] Sample 26K70012C: duplicate glucose disagrees (alert 17)", letter.Subject);
        Assert.Equal(
            """
            What
              Sample 26K70012C: duplicate glucose disagrees
              Level hold: the result waits for a decision.

            Where and when
              sample: 26K70012C
              trial: 26K
              pull: 2
              opened: 2026-01-14 09:00 UTC

            Numbers
              first: 0.061
              second: 0.034
              limit: 0.012
              unit: mg/g
              rule: duplicate-disagreement

            What to do now
              Run two more extracts of this sample; keep all four results.

            How to settle
              Open alert 17 on the board (https://board.lab.example), say what was decided and why; it is then settled for everyone.

            About this message
              Message 0123456789abcdef0123456789abcdef. E-mail can arrive twice; two messages with the same alert number 17 and message number are one.


            """.ReplaceLineEndings("\n"),
            letter.Text);
    }

    [Fact]
    public void Write_WhenTheHeadlineHoldsMarkup_HtmlShowsItAsText()
    {
        var letter = AlertLetter.Write(Samples.Alert with { Headline = "<script>alert(1)</script> & more" }, null);

        Assert.DoesNotContain("<script", letter.Html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; more", letter.Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WhateverIsTold_HtmlAndTextHoldTheSameLines()
    {
        foreach (var notice in new Notice[] { Samples.Alert, Samples.Digest, Samples.Alert with { Event = "undelivered", MissingOn = "email:a" } })
        {
            var letter = AlertLetter.Write(notice, null);
            var html = HtmlLine().Matches(letter.Html).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value));

            Assert.Equal(letter.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Trim()), html);
        }
    }

    [Theory]
    [InlineData("cleared", 1, "[cleared] Sample 26K70012C: duplicate glucose disagrees (alert 17)")]
    [InlineData("undelivered", 1, "[undelivered] Sample 26K70012C: duplicate glucose disagrees (alert 17)")]
    [InlineData("raised", 3, "[hold] Sample 26K70012C: duplicate glucose disagrees (alert 17, raised 3 times)")]
    public void Write_WhateverHappened_NamesItAndTheAlertInTheSubject(string what, int timesRaised, string subject)
    {
        var notice = Samples.Alert with { Event = what, TimesRaised = timesRaised, MissingOn = "webhook:chat" };

        Assert.Equal(subject, AlertLetter.Write(notice, null).Subject);
    }

    [Fact]
    public void Write_WhenTheHeadlineIsLong_SubjectStillEndsWithTheAlert()
    {
        var letter = AlertLetter.Write(Samples.Alert with { Headline = new string('x', 1000), Level = AlertLevel.Block }, null);

        Assert.True(letter.Subject.Length < 200);
        Assert.EndsWith("(alert 17)", letter.Subject, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WhenADigest_CountsWhatIsNotListed()
    {
        var letter = AlertLetter.Write(Samples.Digest, null);

        Assert.Equal("[digest] and 1200 more, 3 of them block (alerts 18 to 1217)", letter.Subject);
        Assert.Contains("  [block] Sample 26K70013A: no fresh mass (alert 18)\n", letter.Text, StringComparison.Ordinal);
        Assert.Contains("  and 1198 more, all on the board\n", letter.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Write_WhenADigestOfABenchDay_ListsPullByPull()
    {
        var digest = Samples.Digest with
        {
            Day = new DateOnly(2026, 1, 14),
            Total = 3,
            Blocks = 0,
            FirstAlertId = 4,
            LastAlertId = 9,
            Lines =
            [
                new DigestLine(4, "hold", "Sample 26K70013A: duplicates disagree", "26K", 3),
                new DigestLine(9, "hold", "File held"),
                new DigestLine(6, "note", "Sample 26K70020B: peel below target", "26K", 2),
            ],
        };

        var letter = AlertLetter.Write(digest, null);

        Assert.Equal("[digest] Bench day 2026-01-14: 3 alerts (alerts 4 to 9)", letter.Subject);
        Assert.Matches(
            @"(?s)Trial 26K, pull 2\n  \[note\].*alert 6.*Trial 26K, pull 3\n  \[hold\].*alert 4.*Of no trial\n  \[hold\] File held \(alert 9\)", letter.Text);
        Assert.DoesNotContain("faster", letter.Text, StringComparison.Ordinal);
    }

    [GeneratedRegex("<(?:p|h3)>(.*?)</(?:p|h3)>")]
    private static partial Regex HtmlLine();
}
