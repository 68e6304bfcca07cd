using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.Deliveries;

public abstract class ConsumerSuite(DialectName store)
{
    private static readonly AlertRow Alert = new(17);

    private readonly RecordingChannel _record = new(AlertFileChannel.Name)
    {
        Policy = RecordingChannel.PolicyOf(AlertFileChannel.Name) with { IsCompleteRecord = true },
    };

    private readonly RecordingChannel _mail = new("email:lab-manager")
    {
        Policy = RecordingChannel.PolicyOf("email:lab-manager", AlertLevel.Block, AlertLevel.Hold),
    };

    [Theory]
    [InlineData("block", true)]
    [InlineData("hold", true)]
    [InlineData("note", false)]
    public async Task Raised_WhenOfALevel_GoesToTheChannelsThatWantIt(string level, bool mailed)
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _mail);

        await desk.RaiseAsync(Alert with { Level = level });

        var rows = await desk.DeliveriesAsync();
        Assert.Equal(mailed ? [AlertFileChannel.Name, "email:lab-manager"] : [AlertFileChannel.Name], rows.Select(row => row.Channel));
        Assert.All(rows, row => Assert.Equal("pending", row.State));
    }

    [Fact]
    public async Task Raised_WhenToldTwice_IsWrittenOnce()
    {
        // Two messages with different ids, as after a rebuilt outbox: the row's own key must hold.
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);

        await desk.RaiseAsync(Alert);
        await desk.TellRaisedAsync(Alert);

        Assert.Single(await desk.DeliveriesAsync());
    }

    [Fact]
    public async Task Raised_WhenTheLevelIsUnknown_FailsAloud()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.AddAlertAsync(Alert);

        var fault = await Assert.ThrowsAsync<ArgumentException>(() => desk.TellRaisedAsync(Alert with { Level = "alarm" }));

        Assert.StartsWith("Found alert level 'alarm'; expected block, hold or note.", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Raised_WhenTheAlertIsNotInTheWarehouse_FailsAloud()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);

        var fault = await Assert.ThrowsAsync<InvalidOperationException>(() => desk.TellRaisedAsync(Alert));

        Assert.StartsWith("Found no alert 17 in the warehouse", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cleared_WhenTheRaisingWasTold_IsToldToo()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();

        await desk.ClearAsync(Alert);
        await desk.DeliverAsync();

        Assert.Equal(["raised", "cleared"], _mail.Alerts.Select(notice => notice.Event));
    }

    [Fact]
    public async Task Cleared_WhenTheRaisingStillWaited_NeitherIsToldButTheRecordHoldsBoth()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _mail);
        await desk.RaiseAsync(Alert);

        await desk.ClearAsync(Alert);
        await desk.DeliverAsync();

        Assert.Empty(_mail.Notices);
        Assert.Equal(["raised", "cleared"], _record.Alerts.Select(notice => notice.Event));
        foreach (var row in (await desk.DeliveriesAsync()).Where(row => row.Channel == "email:lab-manager"))
        {
            Assert.Equal(("held back", "came and went before it was told"), (row.State, row.LastError));
        }
    }

    [Fact]
    public async Task Cleared_WhenItOvertakesItsRaising_NeitherIsTold()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _mail);
        await desk.AddAlertAsync(Alert);
        await desk.ClearAsync(Alert);

        await desk.TellRaisedAsync(Alert);
        await desk.DeliverAsync();

        Assert.Empty(_mail.Notices);
        Assert.Equal(["raised"], _record.Alerts.Select(notice => notice.Event));
    }

    [Fact]
    public async Task Cleared_WhenTheRaisingMayHaveArrived_FollowsIt()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.AnswerWith(SendOutcome.TryLater("the line was cut after the final dot"));
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();

        await desk.ClearAsync(Alert);
        await desk.DeliverAsync();
        Assert.Equal(["raised"], _mail.Alerts.Select(notice => notice.Event));

        _mail.AnswerWith(SendOutcome.Sent);
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(2));
        Assert.Equal(["raised", "raised", "cleared"], _mail.Alerts.Select(notice => notice.Event));
    }

    [Fact]
    public async Task Cleared_WhenTheRaisingFailsAfterwards_IsHeldBack()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.AnswerWith(SendOutcome.TryLater("greylisted"));
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();
        await desk.ClearAsync(Alert);
        _mail.AnswerWith(SendOutcome.Refused("550 no such mailbox"));

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(2));
        await desk.DeliverAsync();

        Assert.Equal("failed", (await desk.DeliveryAsync("email:lab-manager")).State);
        Assert.Equal("held back", (await desk.DeliveryAsync("email:lab-manager", "cleared")).State);
    }

    [Fact]
    public async Task Raised_WhenQuiet_WaitsForTheMorningUnlessItBlocks()
    {
        var night = new RecordingChannel("email:night")
        {
            Policy = RecordingChannel.PolicyOf("email:night") with
            {
                Quiet = new QuietHours(new TimeOnly(8, 0), new TimeOnly(10, 0), TimeZoneInfo.Utc),
            },
        };
        await using var desk = await NotifierDesk.CreateAsync(store, _record, night);
        await desk.RaiseAsync(Alert);
        await desk.RaiseAsync(new AlertRow(18) { Level = "block" });

        await desk.DeliverAsync();
        Assert.Equal([18], night.Alerts.Select(notice => notice.AlertId));

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(59));
        Assert.Single(night.Notices);
        Assert.DoesNotContain(_record.Alerts, notice => notice.Event == "undelivered");

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(1));
        Assert.Equal([18, 17], night.Alerts.Select(notice => notice.AlertId));
    }
}
