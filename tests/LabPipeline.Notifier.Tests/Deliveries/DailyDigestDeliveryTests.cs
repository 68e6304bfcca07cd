using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Tests.Doubles;

namespace LabPipeline.Notifier.Tests.Deliveries;

/// <summary>The desk's clock stands at 09:00 UTC; the digest goes at 16:30 UTC.</summary>
public sealed class DailyDigestDeliveryTests
{
    private static readonly TimeSpan UntilDigest = new(7, 30, 0);

    private readonly RecordingChannel _mail = new("email:manager")
    {
        Policy = RecordingChannel.PolicyOf("email:manager") with { Digest = new DailyDigest(new TimeOnly(16, 30), TimeZoneInfo.Utc) },
    };

    [Fact]
    public async Task Digest_WhenAlertsDoNotBlock_TellsThemOnceADayInOneMessage()
    {
        await using var desk = await NotifierDesk.CreateAsync(_mail);
        await desk.RaiseAsync(new AlertRow(1));
        await desk.RaiseAsync(new AlertRow(2) { Level = "note" });

        await desk.DeliverAsync();
        Assert.Empty(_mail.Notices);
        await desk.DeliverAfterAsync(UntilDigest);
        await desk.DeliverAfterAsync(TimeSpan.FromHours(1));

        var digest = Assert.IsType<DigestNotice>(Assert.Single(_mail.Notices));
        Assert.Equal(new DateOnly(2026, 1, 14), digest.Day);
        Assert.Equal([1, 2], digest.Lines.Select(line => line.AlertId));
        Assert.All(digest.Lines, line => Assert.Equal(("26K", 2), (line.TrialCode, line.PullNo)));
    }

    [Fact]
    public async Task Digest_WhenAnAlertBlocks_TellsItAtOnceByItself()
    {
        await using var desk = await NotifierDesk.CreateAsync(_mail);
        await desk.RaiseAsync(new AlertRow(1) { Level = "block" });

        await desk.DeliverAsync();

        Assert.Equal(1, Assert.Single(_mail.Alerts).AlertId);
    }

    [Fact]
    public async Task Digest_WhenAnAlertClearsBefore_LeavesItOut()
    {
        await using var desk = await NotifierDesk.CreateAsync(_mail);
        await desk.RaiseAsync(new AlertRow(1));
        await desk.RaiseAsync(new AlertRow(2));
        await desk.ClearAsync(new AlertRow(1));

        await desk.DeliverAfterAsync(UntilDigest);

        var digest = Assert.IsType<DigestNotice>(Assert.Single(_mail.Notices));
        Assert.Equal([2], digest.Lines.Select(line => line.AlertId));
    }

    [Fact]
    public async Task Digest_WhenAnAlertClearsAfterIt_TellsTheClearingWithTheNext()
    {
        await using var desk = await NotifierDesk.CreateAsync(_mail);
        await desk.RaiseAsync(new AlertRow(1));
        await desk.DeliverAfterAsync(UntilDigest);
        await desk.ClearAsync(new AlertRow(1));

        await desk.DeliverAfterAsync(TimeSpan.FromHours(24));

        Assert.Equal(["hold", "cleared"], _mail.Notices.Cast<DigestNotice>().SelectMany(digest => digest.Lines).Select(line => line.Label));
    }

    [Fact]
    public async Task Digest_WhenTheServerDoesNotTakeIt_IsRepeatedUnderTheSameId()
    {
        await using var desk = await NotifierDesk.CreateAsync(_mail);
        await desk.RaiseAsync(new AlertRow(1));
        _mail.AnswerWith(SendOutcome.TryLater("451"));
        await desk.DeliverAfterAsync(UntilDigest);
        _mail.AnswerWith(SendOutcome.Sent);

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(2));

        Assert.Equal(2, _mail.Notices.Count);
        Assert.Single(_mail.Notices.Select(notice => notice.Id).Distinct());
        Assert.Equal("delivered", (await desk.DeliveryAsync("email:manager")).State);
    }

    [Fact]
    public async Task Digest_WhileItGathers_IsNotUndelivered()
    {
        var file = new RecordingChannel("alert-file");
        await using var desk = await NotifierDesk.CreateAsync(_mail, file);
        await desk.RaiseAsync(new AlertRow(1));

        await desk.DeliverAfterAsync(TimeSpan.FromHours(2));

        Assert.DoesNotContain(file.Alerts, alert => alert.Event == "undelivered");
    }
}
