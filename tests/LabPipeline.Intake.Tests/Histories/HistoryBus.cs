using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Dapper;
using LabPipeline.Hosting.Bus;
using LabPipeline.Intake.Tests.Storing;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Hosting.Internal;
using Microsoft.Extensions.Logging.Abstractions;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>The relay of a history's process, the broker it publishes to, and a consumer that notes each effect in the warehouse.</summary>
internal sealed class HistoryBus : IAsyncDisposable
{
    private const string Consumer = "history";
    private const int TurnsWithoutBroker = 6;

    // Longer than the pause before a line is built anew, and in six turns longer than a publish may wait.
    private static readonly TimeSpan Turn = TimeSpan.FromSeconds(2);

    // Of the real clock; a quiet machine needs some milliseconds.
    private static readonly TimeSpan LongestDraining = TimeSpan.FromMinutes(1);

    private readonly IntakeBench _bench;
    private LabBusHost _host;
    private OutboxRelay _relay;

    private HistoryBus(IntakeBench bench)
    {
        _bench = bench;
        (_host, _relay) = Compose();
    }

    public HistoryBroker Broker { get; } = new();

    /// <summary>The relay's clock, apart from intake's: its pauses pass without any file growing quiet.</summary>
    public JumpingTime Time { get; } = new(new DateTimeOffset(2026, 1, 14, 22, 0, 0, TimeSpan.Zero));

    /// <summary>How often the broker handed out a message, those that failed or came again among them.</summary>
    public int Deliveries { get; private set; }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<HistoryBus> StartAsync(IntakeBench bench)
    {
        await bench.Warehouse.WriteAsync(
            session => session.Connection.ExecuteAsync("create table effect (message_id text not null, body text not null)", transaction: session.Transaction), Stop);
        var bus = new HistoryBus(bench);
        await bus.StartAsync();
        return bus;
    }

    public async Task RestartAsync()
    {
        await StopAsync();
        (_host, _relay) = Compose();
        await StartAsync();
    }

    /// <summary>Lets the relay work: to its end while the broker takes messages, for a while otherwise.</summary>
    public async Task RunAsync()
    {
        var watch = Stopwatch.StartNew();
        for (var turn = 0; Broker.TakesMessages ? await UnpublishedAsync() > 0 : turn < TurnsWithoutBroker; turn++)
        {
            Assert.True(watch.Elapsed < LongestDraining, $"The outbox is not empty {watch.Elapsed.TotalSeconds:0} s after the broker came back: {_host.Condition}.");
            Time.Advance(Turn);
            _bench.Relay.Wake();
            await Task.Delay(2, Stop);
        }

        Assert.All(await _bench.QueryAsync<string>("select message_id from outbox where published_at is not null"), id => Assert.True(Broker.HasTaken(Guid.Parse(id)), $"{id} is marked and the broker never took it."));
    }

    /// <summary>Hands out what the broker holds, beginning anywhere; the last of it fails, or is handled and not acknowledged, as <paramref name="how"/> says.</summary>
    public async Task DeliverAsync(int how)
    {
        var held = Broker.Held;
        for (var number = 0; Broker.IsThere && number < held.Count; number++)
        {
            var (id, message) = held[(number + how) % held.Count];
            var isLast = number == held.Count - 1;
            Deliveries++;
            await HandleAsync(id, message, fails: isLast && how % 3 == 1);
            if (!isLast || how % 3 == 0)
            {
                Broker.Acknowledge(id);
            }
        }
    }

    /// <summary>Nothing waits, and each message of the outbox had its effect once.</summary>
    /// <returns>Bodies of the messages that had an effect.</returns>
    public async Task<IReadOnlyList<JsonElement>> DrainAsync()
    {
        Broker.ComeBack();
        await RunAsync();
        await DeliverAsync(0);
        Assert.Empty(Broker.Held);
        Assert.Equal(0, await UnpublishedAsync());
        Assert.Equal(
            await _bench.QueryAsync<string>("select lower(message_id) from outbox order by 1"),
            await _bench.QueryAsync<string>("select lower(message_id) from effect order by 1"));
        return [.. (await _bench.QueryAsync<string>("select body from effect")).Select(body => JsonSerializer.Deserialize<JsonElement>(body))];
    }

    public async ValueTask DisposeAsync() => await StopAsync();

    private (LabBusHost Host, OutboxRelay Relay) Compose()
    {
        var host = new LabBusHost(
            Broker, new RunningHandlers(Time), _bench.Warehouse, new ApplicationLifetime(NullLogger<ApplicationLifetime>.Instance), new BusPatience(), Time, NullLoggerFactory.Instance);
        return (host, new OutboxRelay(_bench.Warehouse, host, Broker, _bench.Relay, new ConsumerCatalogue([]), Time, NullLogger<OutboxRelay>.Instance));
    }

    private async Task StartAsync()
    {
        await _host.StartAsync(Stop);
        await _relay.StartAsync(Stop);
    }

    private async Task StopAsync()
    {
        await _relay.StopAsync(CancellationToken.None);
        await _host.StopAsync(CancellationToken.None);
        _relay.Dispose();
        _host.Dispose();
    }

    private Task<int> UnpublishedAsync() => _bench.Warehouse.ReadAsync(OutboxStore.CountUnpublishedAsync, Stop);

    /// <summary>As every consumer does: inbox and effect in one transaction.</summary>
    private async Task HandleAsync(Guid id, object message, bool fails)
    {
        try
        {
            await _bench.Warehouse.WriteAsync(
                async session =>
                {
                    if (await InboxStore.TryEnterAsync(session, id, Consumer, Time.GetUtcNow()))
                    {
                        var effect = new { id = id.ToString(null, CultureInfo.InvariantCulture), body = JsonSerializer.Serialize(message, message.GetType()) };
                        await session.Connection.ExecuteAsync("insert into effect (message_id, body) values (@id, @body)", effect, session.Transaction);
                    }

                    if (fails)
                    {
                        throw new InvalidOperationException("the consumer failed");
                    }
                },
                Stop);
        }
        catch (InvalidOperationException) when (fails)
        {
            // The broker keeps the message.
        }
    }
}
