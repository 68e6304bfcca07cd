using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.Deliveries;

public abstract class ReminderSuite(DialectName store)
{
    private static readonly AlertRow Alert = new(17);

    private readonly RecordingChannel _record = new(AlertFileChannel.Name);

    private readonly RecordingChannel _technician = new("email:technician")
    {
        Policy = RecordingChannel.PolicyOf("email:technician", AlertLevel.Block, AlertLevel.Hold) with { RemindAfter = TimeSpan.FromHours(2) },
    };

    private readonly RecordingChannel _manager = new("email:lab-manager")
    {
        Policy = RecordingChannel.PolicyOf("email:lab-manager") with { Levels = new HashSet<AlertLevel>(), EscalateAfter = TimeSpan.FromHours(4) },
    };

    [Fact]
    public async Task Reminder_WhenNobodyAcknowledges_RepeatsUnderNewIdsUntilSomebodyDoes()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _technician);
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(119));
        Assert.Single(_technician.Notices);
        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(1));
        await desk.DeliverAfterAsync(TimeSpan.FromHours(2));
        Assert.Equal(["raised", "reminder", "reminder"], _technician.Alerts.Select(notice => notice.Event));
        Assert.Equal(3, _technician.Notices.Select(notice => notice.Id).Distinct().Count());

        await desk.RunAsync("update qc_alert set acknowledged_at = '2026-01-14T13:01:00.000Z', acknowledged_by = 'm'");
        await desk.DeliverAfterAsync(TimeSpan.FromHours(8));
        Assert.Equal(3, _technician.Notices.Count);
        Assert.Equal(["raised"], _record.Alerts.Select(notice => notice.Event));
    }

    [Fact]
    public async Task Reminder_WhenAcknowledgedBeforeItWent_IsHeldBack()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _technician);
        await desk.RaiseAsync(Alert);
        await desk.DeliverAsync();
        _technician.AnswerWith(SendOutcome.TryLater("450"));
        await desk.DeliverAfterAsync(TimeSpan.FromHours(2));
        await desk.RunAsync("update qc_alert set acknowledged_at = '2026-01-14T11:01:00.000Z'");
        _technician.AnswerWith(SendOutcome.Sent);

        await desk.DeliverAfterAsync(TimeSpan.FromMinutes(5));

        Assert.Equal(2, _technician.Notices.Count);
        Assert.Equal("held back", (await desk.DeliveryAsync("email:technician", "reminder")).State);
    }

    [Theory]
    [InlineData("hold", true)]
    [InlineData("block", true)]
    [InlineData("note", false)]
    public async Task Escalation_WhenNobodyAcknowledgesForHours_TellsTheNextPersonOnce(string level, bool told)
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _record, _manager);
        await desk.RaiseAsync(Alert with { Level = level });
        await desk.DeliverAsync();

        await desk.DeliverAfterAsync(TimeSpan.FromHours(3.9));
        Assert.Empty(_manager.Notices);
        await desk.DeliverAfterAsync(TimeSpan.FromHours(0.2));
        await desk.DeliverAfterAsync(TimeSpan.FromHours(10));

        Assert.Equal(told ? ["reminder"] : [], _manager.Alerts.Select(notice => notice.Event));
    }
}
