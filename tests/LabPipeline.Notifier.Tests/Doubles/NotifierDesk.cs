using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>A warehouse, a stopped clock and the notifier's parts around some channels.</summary>
internal sealed class NotifierDesk : IAsyncDisposable
{
    public static readonly DateTimeOffset Start = new(2026, 1, 14, 9, 0, 0, TimeSpan.Zero);

    private readonly ScratchWarehouse _scratch;
    private readonly RelaySignal _relay = new();
    private readonly ChannelSet _channels;
    private int _messages;

    private NotifierDesk(ScratchWarehouse scratch, FakeTimeProvider time, IReadOnlyList<IAlertChannel> channels)
    {
        _scratch = scratch;
        Time = time;
        _channels = new ChannelSet(channels);
        Worker = NewWorker();
    }

    public FakeTimeProvider Time { get; }

    public DeliverySignal Signal { get; } = new();

    public LabWarehouse Warehouse => _scratch.Warehouse;

    public DeliveryWorker Worker { get; }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static Task<NotifierDesk> CreateAsync(params IAlertChannel[] channels) => CreateAsync(DialectName.Sqlite, channels);

    public static async Task<NotifierDesk> CreateAsync(DialectName store, params IAlertChannel[] channels)
    {
        var time = new FakeTimeProvider(Start);
        return new NotifierDesk(await ScratchWarehouse.CreateAsync(store, time), time, channels);
    }

    /// <summary>A worker as another start of the program would have it: nothing remembered but what the warehouse holds.</summary>
    public DeliveryWorker NewWorker() => new(
        _channels.All.Select(channel => new ChannelCourier(
            channel, Warehouse, Signal, Time, new Random(17), NullLogger<ChannelCourier>.Instance)),
        new DeliveryWatch(_channels, Warehouse, Signal, Time, NullLogger<DeliveryWatch>.Instance),
        Warehouse,
        Time);

    public Task AddAlertAsync(AlertRow alert) => Warehouse.WriteAsync(
        session => AlertRow.AddAsync(session, alert, Time.GetUtcNow()), Stop);

    public async Task RaiseAsync(AlertRow alert)
    {
        await AddAlertAsync(alert);
        await TellRaisedAsync(alert);
    }

    public Task TellRaisedAsync(AlertRow alert) =>
        new QcAlertRaisedConsumer(Warehouse, _relay, Signal, _channels, Time).Consume(ContextStub.Of(
            new QcAlertRaised(alert.Id, alert.TimesRaised, alert.Rule, alert.Level, alert.Headline), NextMessage(), Stop));

    public async Task ClearAsync(AlertRow alert)
    {
        await SetStateAsync(alert, "cleared");
        await TellClearedAsync(alert);
    }

    public Task TellClearedAsync(AlertRow alert) =>
        new QcAlertClearedConsumer(Warehouse, _relay, Signal, _channels, Time).Consume(ContextStub.Of(
            new QcAlertCleared(alert.Id, alert.TimesRaised, alert.Rule), NextMessage(), Stop));

    public Task SetStateAsync(AlertRow alert, string state) => RunAsync($"update qc_alert set state = '{state}' where alert_id = {alert.Id}");

    public Task DeliverAsync() => Worker.DeliverDueAsync(Stop);

    public async Task DeliverAfterAsync(TimeSpan wait)
    {
        Time.Advance(wait);
        await DeliverAsync();
    }

    public Task<IReadOnlyList<StoredDelivery>> DeliveriesAsync() => Warehouse.ReadAsync<IReadOnlyList<StoredDelivery>>(
        async session => (await session.Connection.QueryAsync<StoredDelivery>(StoredDelivery.Select)).AsList(), Stop);

    public async Task<StoredDelivery> DeliveryAsync(string channel, string deliveryEvent = "raised") =>
        (await DeliveriesAsync()).Single(row => row.Channel == channel && row.Event == deliveryEvent);

    public Task RunAsync(string sql) => Warehouse.WriteAsync(
        session => session.Connection.ExecuteAsync(sql, transaction: session.Transaction), Stop);

    public Task<long> CountAsync(string sql) => Warehouse.ReadAsync(session => session.Connection.ExecuteScalarAsync<long>(sql), Stop);

    public async ValueTask DisposeAsync()
    {
        Worker.Dispose();
        _relay.Dispose();
        await _scratch.DisposeAsync();
    }

    private Guid NextMessage() => new(++_messages, 0, 0, new byte[8]);
}
