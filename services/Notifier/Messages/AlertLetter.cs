using System.Globalization;
using System.Net;
using System.Text;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Messages;

/// <summary>A notice as a person reads it: subject, plain text and HTML, the two made from the same sections.</summary>
public sealed record AlertLetter(string Subject, string Text, string Html)
{
    private const int LongestSubject = 160;

    /// <param name="notice">What to tell.</param>
    /// <param name="boardUrl">Where the board is, when the settings say so.</param>
    public static AlertLetter Write(Notice notice, string? boardUrl) => notice switch
    {
        AlertNotice alert => Compose(SubjectOf(alert), SectionsOf(alert, boardUrl)),
        DigestNotice digest => Compose(SubjectOf(digest), SectionsOf(digest, boardUrl)),
        TestNotice test => Compose($"[test] The channel {test.Channel} reaches you", SectionsOf(test)),
        _ => throw new ArgumentException($"Found a {notice.GetType().Name}; expected an alert, a digest or a test."),
    };

    private static string SubjectOf(AlertNotice alert)
    {
        var again = alert.TimesRaised > 1 ? Invariant($", raised {alert.TimesRaised} times") : "";
        var label = NoticeLabels.Of(alert.Event, AlertLevels.NameOf(alert.Level));
        return Invariant($"[{label}] {NoticeText.OneLine(alert.Headline, LongestSubject)} (alert {alert.AlertId}{again})");
    }

    private static string SubjectOf(DigestNotice digest)
    {
        var blocks = digest.Blocks > 0 ? Invariant($", {digest.Blocks} of them block") : "";
        var what = digest.Day is { } day ? Invariant($"Bench day {day:yyyy-MM-dd}: {CountOf(digest)}") : Invariant($"and {digest.Total} more");
        return Invariant($"[digest] {what}{blocks} ({RangeOf(digest)})");
    }

    private static List<Section> SectionsOf(AlertNotice alert, string? boardUrl)
    {
        var sections = new List<Section> { new("What", [alert.Headline, .. ExplanationOf(alert)]) };
        var where = new List<string>();
        Add(where, "sample", alert.Barcode);
        Add(where, "trial", alert.TrialCode);
        Add(where, "pull", alert.PullNo?.ToString(CultureInfo.InvariantCulture));
        where.Add(Invariant($"opened: {alert.OpenedAt:yyyy-MM-dd HH:mm} UTC"));
        sections.Add(new Section("Where and when", where));
        sections.Add(new Section("Numbers", [.. alert.Facts.Select(fact => $"{fact.Name}: {fact.Value}"), $"rule: {alert.Rule}"]));
        if (alert.Event != DeliveryEvents.Cleared)
        {
            sections.Add(new Section("What to do now", [alert.Advice]));
            sections.Add(new Section("How to settle", [SettlingOf(Invariant($"alert {alert.AlertId}"), boardUrl)]));
        }

        sections.Add(Footer(alert.Id, Invariant($"alert number {alert.AlertId}")));
        return sections;
    }

    private static IEnumerable<string> ExplanationOf(AlertNotice alert) => alert.Event switch
    {
        DeliveryEvents.Cleared => ["The cause went away; nothing is left to do."],
        DeliveryEvents.Undelivered => [$"This alert has not been delivered on {alert.MissingOn}. Tell whoever relies on that channel, and have it repaired."],
        DeliveryEvents.Reminder => ["Nobody has acknowledged this alert yet."],
        _ => alert.Level switch
        {
            AlertLevel.Block => ["Level block: the measurement cannot be used."],
            AlertLevel.Hold => ["Level hold: the result waits for a decision."],
            _ => ["Level note: out of the usual range."],
        },
    };

    private static List<Section> SectionsOf(TestNotice test) =>
    [
        new("What", [Invariant($"{test.AskedBy} asked at {test.At:yyyy-MM-dd HH:mm} UTC whether this channel works. It does. Nothing has happened in the laboratory.")]),
        new("What to do now", ["Nothing."]),
        Footer(test.Id, "channel"),
    ];

    private static List<Section> SectionsOf(DigestNotice digest, string? boardUrl)
    {
        return
        [
            new Section("What", [digest.Day is { } day
                ? Invariant($"{CountOf(digest)} of bench day {day:yyyy-MM-dd} that did not have to be told at once.")
                : Invariant($"{digest.Total} alerts came faster than single messages are sent; the most urgent are listed first.")]),
            .. digest.Day is null ? [new Section("Alerts", LinesOf(digest.Lines))] : SectionsByPull(digest.Lines),
            .. RestOf(digest),
            new Section("What to do now", [digest.Day is null
                ? "So many at once usually have one cause: an instrument, a method setting or a file. Look for it first."
                : "Start with what holds a result: while extracts and chips of the day are still there, a repeat is cheap."]),
            new Section("How to settle", [SettlingOf("each alert", boardUrl)]),
            Footer(digest.Id, "digest"),
        ];
    }

    private static IEnumerable<Section> SectionsByPull(IReadOnlyList<DigestLine> lines) => lines
        .GroupBy(line => (line.TrialCode, line.PullNo))
        .OrderBy(pull => pull.Key.TrialCode is null).ThenBy(pull => pull.Key.TrialCode, StringComparer.Ordinal).ThenBy(pull => pull.Key.PullNo)
        .Select(pull => new Section(HeadingOf(pull.Key.TrialCode, pull.Key.PullNo), LinesOf(pull)));

    private static string HeadingOf(string? trial, int? pull) => (trial, pull) switch
    {
        (null, _) => "Of no trial",
        (_, null) => $"Trial {trial}",
        _ => Invariant($"Trial {trial}, pull {pull}"),
    };

    private static List<string> LinesOf(IEnumerable<DigestLine> lines) =>
        [.. lines.Select(line => Invariant($"[{line.Label}] {line.Headline} (alert {line.AlertId})"))];

    private static IEnumerable<Section> RestOf(DigestNotice digest) => digest.Total > digest.Lines.Count
        ? [new Section("Not listed", [Invariant($"and {digest.Total - digest.Lines.Count} more, all on the board")])]
        : [];

    private static string CountOf(DigestNotice digest) => digest.Total == 1 ? "1 alert" : Invariant($"{digest.Total} alerts");

    private static string RangeOf(DigestNotice digest) => digest.FirstAlertId == digest.LastAlertId
        ? Invariant($"alert {digest.FirstAlertId}")
        : Invariant($"alerts {digest.FirstAlertId} to {digest.LastAlertId}");

    private static string SettlingOf(string what, string? boardUrl) =>
        $"Open {what} on the board{(boardUrl is null ? "" : $" ({boardUrl})")}, say what was decided and why; it is then settled for everyone.";

    private static Section Footer(string id, string sameThing) => new(
        "About this message",
        [$"Message {id}. E-mail can arrive twice; two messages with the same {sameThing} and message number are one."]);

    private static void Add(List<string> lines, string name, string? value)
    {
        if (value is not null)
        {
            lines.Add($"{name}: {value}");
        }
    }

    private static AlertLetter Compose(string subject, List<Section> sections)
    {
        var text = new StringBuilder();
        var html = new StringBuilder("<!DOCTYPE html><html lang=\"en\"><body>\n");
        foreach (var section in sections)
        {
            text.Append(section.Heading).Append('\n');
            html.Append("<h3>").Append(section.Heading).Append("</h3>\n");
            foreach (var line in section.Lines)
            {
                text.Append("  ").Append(line).Append('\n');
                html.Append("<p>").Append(WebUtility.HtmlEncode(line)).Append("</p>\n");
            }

            text.Append('\n');
        }

        return new AlertLetter(subject, text.ToString(), html.Append("</body></html>\n").ToString());
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private sealed record Section(string Heading, IReadOnlyList<string> Lines);
}
