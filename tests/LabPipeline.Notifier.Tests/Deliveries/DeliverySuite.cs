using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.Deliveries;

public abstract class DeliverySuite(DialectName store)
{
    private static readonly AlertRow Alert = new(17);

    private readonly RecordingChannel _record = new(AlertFileChannel.Name);
    private readonly RecordingChannel _mail = new("email:lab-manager");
    private readonly RecordingChannel _hook = new("webhook:chat");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Deliver_WhenTaken_IsDoneAndNotRepeated()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.RaiseAsync(Alert);

        await desk.DeliverAsync();
        await desk.DeliverAfterAsync(TimeSpan.FromDays(3));

        var row = await desk.DeliveryAsync("email:lab-manager");
        Assert.Equal(("delivered", 1, NotifierDesk.Start), (row.State, row.Attempts, row.DeliveredAt));
        Assert.Single(_mail.Notices);
    }

    [Fact]
    public async Task Deliver_WhenTheTargetIsNotReady_TriesAgainUnderTheSameId()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.AnswerWith(SendOutcome.TryLater("450 greylisted"));
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();
        var row = await desk.DeliveryAsync("email:lab-manager");
        Assert.Equal(("pending", "450 greylisted"), (row.State, row.LastError));
        Assert.InRange(row.NextAttemptAt - NotifierDesk.Start, TimeSpan.FromSeconds(48), TimeSpan.FromSeconds(72));

        _mail.AnswerWith(SendOutcome.Sent);
        await desk.DeliverAfterAsync(TimeSpan.FromSeconds(40));
        Assert.Single(_mail.Notices);
        await desk.DeliverAfterAsync(TimeSpan.FromSeconds(40));

        Assert.Equal(2, _mail.Notices.Count);
        Assert.Single(_mail.Notices.Select(notice => notice.Id).Distinct());
        Assert.Equal("delivered", (await desk.DeliveryAsync("email:lab-manager")).State);
    }

    [Fact]
    public async Task Deliver_WhenTwoDaysWereNotEnough_FailsWithTheReason()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.AnswerWith(SendOutcome.TryLater("451 local error"));
        await desk.RaiseAsync(Alert);

        for (var hours = 0; hours < 51; hours++)
        {
            await desk.DeliverAfterAsync(TimeSpan.FromHours(1));
        }

        var row = await desk.DeliveryAsync("email:lab-manager");
        Assert.Equal(("failed", "given up after 48 h: 451 local error"), (row.State, row.LastError));
    }

    [Fact]
    public async Task Deliver_WhenRefusedForGood_FailsAtOnceAndTurnsRedElsewhere()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _mail, _hook);
        _mail.AnswerWith(SendOutcome.Refused("550 no such mailbox"));
        await desk.RaiseAsync(Alert);

        await desk.DeliverAsync();
        await desk.DeliverAsync();
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(30));

        Assert.Equal(("failed", "550 no such mailbox"), ((await desk.DeliveryAsync("email:lab-manager")).State, (await desk.DeliveryAsync("email:lab-manager")).LastError));
        Assert.Equal(["raised", "undelivered"], _record.Alerts.Select(notice => notice.Event));
        Assert.Equal(["raised", "undelivered"], _hook.Alerts.Select(notice => notice.Event));
        Assert.Equal("email:lab-manager", _hook.Alerts.Last().MissingOn);
        Assert.Single(_mail.Notices);
    }

    [Fact]
    [Shows(64)]
    public async Task Deliver_WhenOwedForMoreThanTenMinutes_TurnsRedElsewhereOnce()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _mail);
        _mail.AnswerWith(SendOutcome.TryLater("connection refused"));
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(9.9));
        Assert.DoesNotContain(_record.Alerts, notice => notice.Event == "undelivered");

        for (var minutes = 0; minutes < 120; minutes++)
        {
            await desk.DeliverAfterAsync(TimeSpan.FromMinutes(1));
        }

        Assert.Single(_record.Alerts, notice => notice.Event == "undelivered");
    }

    [Fact]
    public async Task Deliver_WhenReachedAfterAllBeforeTheRedLineWent_HoldsTheRedLineBack()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail, _hook);
        _mail.AnswerWith(SendOutcome.TryLater("connection refused"));
        _hook.AnswerWith(SendOutcome.TryLater("503"));
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(11));
        Assert.Equal(2, (await desk.DeliveriesAsync()).Count(row => row.Event == "undelivered"));

        _mail.AnswerWith(SendOutcome.Sent);
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(5));
        _hook.AnswerWith(SendOutcome.Sent);
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(5));

        Assert.Equal("held back", (await desk.DeliveryAsync("webhook:chat", "undelivered")).State);
    }

    [Fact]
    [Shows(63)]
    public async Task Deliver_WhenStoppedBetweenSendingAndMarking_SendsAgainUnderTheSameIdRatherThanNever()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.RaiseAsync(Alert);
        using var kill = new CancellationTokenSource();
        _mail.Answer = async (_, _) =>
        {
            await kill.CancelAsync();
            throw new OperationCanceledException(kill.Token);
        };
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => desk.Worker.DeliverDueAsync(kill.Token));
        _mail.AnswerWith(SendOutcome.Sent);
        using var restarted = desk.NewWorker();

        await restarted.DeliverDueAsync(Stop);
        Assert.Single(_mail.Notices);
        desk.Time.Advance(ParcelClaim.ClaimFor);
        await restarted.DeliverDueAsync(Stop);

        Assert.Equal(2, _mail.Notices.Count);
        Assert.Single(_mail.Notices.Select(notice => notice.Id).Distinct());
        Assert.Equal("delivered", (await desk.DeliveryAsync("email:lab-manager")).State);
    }

    [Fact]
    [Shows(65)]
    public async Task Deliver_WhenOneTargetHangs_TheOthersAreDoneMeanwhile()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _hook, _mail, _record);
        var hanging = new TaskCompletionSource();
        _hook.Answer = async (_, token) =>
        {
            hanging.SetResult();
            await Task.Delay(Timeout.Infinite, token);
            return SendOutcome.Sent;
        };
        await desk.RaiseAsync(Alert);

        var round = desk.DeliverAsync();
        await hanging.Task.WaitAsync(TimeSpan.FromSeconds(10), Stop);
        await Eventually(async () => (await desk.DeliveriesAsync()).Count(row => row.State == "delivered") == 2);
        Assert.False(round.IsCompleted);

        desk.Time.Advance(TimeSpan.FromSeconds(10));
        await round.WaitAsync(TimeSpan.FromSeconds(10), Stop);
        var row = await desk.DeliveryAsync("webhook:chat");
        Assert.Equal("pending", row.State);
        Assert.StartsWith("TimeoutRejectedException", row.LastError, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(65)]
    public async Task Deliver_WhenATargetIsDead_IsLeftAloneAndThenProbed()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        _mail.Answer = (_, _) => throw new InvalidOperationException("broken");
        for (var id = 1; id <= 9; id++)
        {
            await desk.RaiseAsync(new AlertRow(id));
        }

        await desk.DeliverAsync();
        Assert.Equal(ChannelPipeline.FailuresToOpen, _mail.Notices.Count);
        await desk.DeliverAsync();
        Assert.Equal(ChannelPipeline.FailuresToOpen, _mail.Notices.Count);

        _mail.AnswerWith(SendOutcome.Sent);
        await desk.DeliverAfterAsync(ChannelPipeline.Break);

        Assert.Equal(4, (await desk.DeliveriesAsync()).Count(row => row.State == "delivered"));
        Assert.Equal(1, (await desk.DeliveriesAsync()).Max(row => row.Attempts));
    }

    [Fact]
    public async Task Deliver_WhenTheTargetIsGone_StopsTheChannelAndTurnsRedElsewhere()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _hook);
        _hook.AnswerWith(SendOutcome.Gone("hooks.lab.example answered 410"));
        await desk.RaiseAsync(Alert);
        await desk.RaiseAsync(new AlertRow(18));

        await desk.DeliverAsync();
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(11));

        Assert.Single(_hook.Notices);
        Assert.Equal([17, 18], _record.Alerts.Where(notice => notice.Event == "undelivered").Select(notice => notice.AlertId).Order());

        _hook.AnswerWith(SendOutcome.Sent);
        using var restarted = desk.NewWorker();
        await restarted.DeliverDueAsync(Stop);
        Assert.Contains(_hook.Alerts, notice => notice.AlertId == 18 && notice.Event == "raised");
    }

    [Fact]
    public async Task Deliver_WhenSeveralWait_TellsBlocksFirst()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.RaiseAsync(new AlertRow(1) { Level = "note" });
        await desk.RaiseAsync(new AlertRow(2) { Level = "hold" });
        await desk.RaiseAsync(new AlertRow(3) { Level = "block" });

        await desk.DeliverAsync();

        Assert.Equal([AlertLevel.Block, AlertLevel.Hold, AlertLevel.Note], _mail.Alerts.Select(notice => notice.Level));
    }

    [Fact]
    public async Task Deliver_WhenAnotherProcessHoldsTheLease_LeavesItAlone()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.RaiseAsync(Alert);
        await desk.RunAsync($"insert into lease values ('{ParcelClaim.LeaseName}', 'elsewhere:1', '2026-01-14T09:01:00.000Z')");

        await desk.DeliverAsync();
        Assert.Empty(_mail.Notices);

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(1));
        Assert.Single(_mail.Notices);
    }

    [Fact]
    public async Task Deliver_WhenTheHeadlineIsFullOfEscapesAndTheFactsAMegabyte_TellsACleanCutLine()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);

        // As long as the column allows; every escape becomes six characters in the message.
        await desk.RaiseAsync(Alert with { Headline = ("Sample\r\n\u001b[31mxxx" + new string('\u001b', 1000))[..1000], Facts = new string('{', 1_000_000) });

        await desk.DeliverAsync();

        var notice = Assert.Single(_mail.Alerts);
        Assert.StartsWith("Sample\\r\\n\\u001B[31mxxx", notice.Headline, StringComparison.Ordinal);
        Assert.True(notice.Headline.Length <= 1001);
        Assert.Equal("too many to show here; see the board", Assert.Single(notice.Facts).Value);
    }

    [Fact]
    public async Task Run_WhenAnAlertComes_DeliversWithoutWaitingForTheTimer()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.Worker.StartAsync(Stop);
        await Task.Delay(50, Stop);

        // The clock stands still, so only the signal can wake the courier.
        await desk.RaiseAsync(Alert);
        await Eventually(() => Task.FromResult(_mail.Notices.Count == 1));

        await desk.Worker.StopAsync(Stop);
    }

    private static async Task Eventually(Func<Task<bool>> condition)
    {
        for (var tries = 0; tries < 500; tries++)
        {
            if (await condition())
            {
                return;
            }

            await Task.Delay(20, Stop);
        }

        Assert.Fail("The condition did not come true within 10 s.");
    }
}
