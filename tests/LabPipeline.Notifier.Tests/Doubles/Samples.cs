using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>Notices ready to be told.</summary>
internal static class Samples
{
    public static AlertNotice Alert { get; } = new()
    {
        Id = "0123456789abcdef0123456789abcdef",
        At = NotifierDesk.Start,
        Event = "raised",
        AlertId = 17,
        TimesRaised = 1,
        Level = AlertLevel.Hold,
        Rule = "duplicate-disagreement",
        TrialCode = "26K",
        PullNo = 2,
        Barcode = "26K70012C",
        OpenedAt = NotifierDesk.Start,
        Headline = "Sample 26K70012C: duplicate glucose disagrees",
        Advice = "Run two more extracts of this sample; keep all four results.",
        Facts = [new Fact("first", "0.061"), new Fact("second", "0.034"), new Fact("limit", "0.012"), new Fact("unit", "mg/g")],
    };

    public static DigestNotice Digest { get; } = new()
    {
        Id = "fedcba9876543210fedcba9876543210",
        At = NotifierDesk.Start,
        Total = 1200,
        Blocks = 3,
        FirstAlertId = 18,
        LastAlertId = 1217,
        Lines = [new DigestLine(18, "block", "Sample 26K70013A: no fresh mass"), new DigestLine(19, "hold", "Sample 26K70014X: control failed")],
    };
}
