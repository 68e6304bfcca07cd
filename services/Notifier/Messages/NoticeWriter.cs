using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Routing;
using LabPipeline.Warehouse.Channels;

namespace LabPipeline.Notifier.Messages;

/// <summary>Turns rows of the warehouse into notices; the only door through which text from files reaches a channel.</summary>
public static class NoticeWriter
{
    private const int LongestName = 100;

    public static AlertNotice Alert(DueDelivery delivery) => new()
    {
        Id = NoticeIdentity.Of(delivery),
        At = delivery.DueAt,
        Event = delivery.Event,
        AlertId = delivery.AlertId,
        TimesRaised = delivery.TimesRaised,
        Level = AlertLevels.Parse(delivery.Level),
        Rule = NoticeText.OneLine(delivery.Rule, LongestName),
        TrialCode = Name(delivery.TrialCode),
        PullNo = delivery.PullNo,
        Barcode = Name(delivery.Barcode),
        OpenedAt = delivery.OpenedAt,
        Headline = NoticeText.OneLine(delivery.Headline, NoticeText.LongestHeadline),
        Advice = NoticeText.OneLine(delivery.Advice, NoticeText.LongestHeadline),
        Facts = NoticeText.FactsOf(delivery.Facts),
        MissingOn = delivery.MissingOn,
    };

    public static TestNotice Test(ChannelTest test) => new()
    {
        Id = NoticeIdentity.Of(test),
        At = test.AskedAt,
        Channel = NoticeText.OneLine(test.Channel, LongestName),
        AskedBy = NoticeText.OneLine(test.AskedBy, LongestName),
    };

    public static DigestNotice Digest(string digestId, DateOnly? day, DigestHead head, IReadOnlyList<DigestRow> rows) => new()
    {
        Id = digestId,
        At = head.DueAt,
        Day = day,
        Total = head.Total,
        Blocks = head.Blocks,
        FirstAlertId = head.FirstAlertId,
        LastAlertId = head.LastAlertId,
        Lines =
        [
            .. rows.Select(row => new DigestLine(
                row.AlertId, NoticeLabels.Of(row.Event, row.Level), NoticeText.OneLine(row.Headline, NoticeText.LongestHeadline), Name(row.TrialCode), row.PullNo)),
        ],
    };

    private static string? Name(string? text) => text is null ? null : NoticeText.OneLine(text, LongestName);
}
