using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Tests.Doubles;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Channels;

namespace LabPipeline.Notifier.Tests.Deliveries;

/// <summary>The database goes away under a running notifier; what it owes is told once it is back, without a restart.</summary>
public abstract class OutageSuite(DialectName store)
{
    private static readonly AlertRow Alert = new(17);

    private readonly RecordingChannel _mail = new("email:lab-manager");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Worker_WhenTheDatabaseIsAwayForAWhile_DeliversAfterwards()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        var database = new OutageDialect(desk.Warehouse.Dialect);
        using var warehouse = new LabWarehouse(database, desk.Time);
        var (courierLog, watchLog) = (new LogBook<ChannelCourier>(), new LogBook<DeliveryWatch>());
        using var worker = new DeliveryWorker(
            [new ChannelCourier(_mail, warehouse, desk.Signal, desk.Time, new Random(17), courierLog)],
            new DeliveryWatch(new ChannelSet([_mail]), warehouse, desk.Signal, desk.Time, watchLog), warehouse, desk.Time);
        await worker.StartAsync(Stop);
        database.IsAway = true;
        await desk.RaiseAsync(Alert);
        await courierLog.WaitForAsync("DeliveryInterrupted email:lab-manager", () => desk.Time.Advance(TimeSpan.FromSeconds(5)));
        await watchLog.WaitForAsync("WatchInterrupted", () => desk.Time.Advance(TimeSpan.FromSeconds(30)));
        Assert.Empty(_mail.Notices);

        database.IsAway = false;
        await Wait.UntilAsync(async () => (await desk.DeliveryAsync("email:lab-manager")).State == "delivered", () => desk.Time.Advance(TimeSpan.FromSeconds(5)));

        Assert.Single(_mail.Alerts);
        await worker.StopAsync(Stop);
    }

    [Fact]
    public async Task TestWorker_WhenTheDatabaseIsAwayForAWhile_SendsTheTestAfterwards()
    {
        await using var desk = await NotifierDesk.CreateAsync(store, _mail);
        await desk.Warehouse.WriteAsync(session => ChannelTestStore.AskAsync(session, "email:lab-manager", "some.one", desk.Time.GetUtcNow()), Stop);
        var database = new OutageDialect(desk.Warehouse.Dialect) { IsAway = true };
        using var warehouse = new LabWarehouse(database, desk.Time);
        var log = new LogBook<ChannelTestWorker>();
        using var worker = new ChannelTestWorker(new ChannelSet([_mail]), warehouse, desk.Time, log);
        await worker.StartAsync(Stop);
        await log.WaitForAsync("ChannelTestInterrupted");

        database.IsAway = false;
        await log.WaitForAsync("ChannelTested", () => desk.Time.Advance(TimeSpan.FromSeconds(2)));

        Assert.Equal(ChannelTestStates.Delivered, Assert.Single(await desk.Warehouse.ReadAsync(ChannelTestStore.ListNewestAsync, Stop)).State);
        Assert.Single(_mail.Notices);
        await worker.StopAsync(Stop);
    }
}
