using System.Text.Json;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Durability;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Hosting.Bus;

/// <summary>Publishes what the outbox holds, in order, under each row's own message id, and marks it afterwards.</summary>
/// <remarks>
/// A bus that ends at this process is given only what somebody here consumes, so that beside others on the same warehouse each process
/// takes its own. A shared bus is given everything, by the one process that holds the lease. A crash between publishing and marking sends
/// a message twice; the consumers' inboxes make that harmless.
/// </remarks>
public sealed class OutboxRelay(
    LabWarehouse warehouse, LabBusHost bus, IBusTransport transport, RelaySignal signal, ConsumerCatalogue consumers, TimeProvider time, ILogger<OutboxRelay> log)
    : BackgroundService
{
    public const string Lease = "outbox-relay";

    private const int BatchSize = 200;

    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(2);

    // Other processes cannot wake this one.
    private static readonly TimeSpan LookAgainForOthers = TimeSpan.FromMilliseconds(500);

    private static readonly TimeSpan LeaseTime = TimeSpan.FromSeconds(30);

    private static readonly TimeSpan RenewEvery = TimeSpan.FromSeconds(5);

    private readonly IReadOnlyCollection<string> _types = transport.EndsHere
        ? [.. consumers.Entries.Select(entry => entry.MessageType).Distinct()]
        : [.. MessageTypes.All.Select(type => type.FullName!)];

    private readonly string _holder = LeaseHolder.ThisProcess;
    private long? _askedAt;
    private bool _holds;

    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        await base.StopAsync(cancellationToken).ConfigureAwait(false);
        if (_holds)
        {
            await LeaseEnd.GiveBackAsync(warehouse, Lease, _holder, log).ConfigureAwait(false);
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (_types.Count == 0)
        {
            return;
        }

        if (transport.EndsHere)
        {
            await ReopenForgottenAsync(stoppingToken).ConfigureAwait(false);
        }

        while (!stoppingToken.IsCancellationRequested)
        {
            var again = LookAgain;
            try
            {
                again = await RelayAllAsync(stoppingToken).ConfigureAwait(false);
            }
            catch (BusDownException exception)
            {
                log.LogWarning("RelayDelayed {Reason}", exception.Message);
                continue;
            }
            catch (Exception exception) when (exception is not OperationCanceledException || !stoppingToken.IsCancellationRequested)
            {
                log.LogWarning(exception, "RelayDelayed");
            }

            await signal.WaitAsync(again, stoppingToken).ConfigureAwait(false);
        }
    }

    /// <returns>When to look again.</returns>
    private async Task<TimeSpan> RelayAllAsync(CancellationToken cancellationToken)
    {
        if (!bus.IsUp)
        {
            // Another process may reach the broker where this one does not.
            await GiveBackAsync(cancellationToken).ConfigureAwait(false);
            await bus.WaitUntilUpAsync(cancellationToken).ConfigureAwait(false);
        }

        while (await MayRelayAsync(cancellationToken).ConfigureAwait(false))
        {
            if (await RelayBatchAsync(cancellationToken).ConfigureAwait(false) < BatchSize)
            {
                return transport.EndsHere ? LookAgain : LookAgainForOthers;
            }
        }

        return LookAgain;
    }

    private async Task<bool> MayRelayAsync(CancellationToken cancellationToken)
    {
        if (transport.EndsHere)
        {
            return true;
        }

        if (_askedAt is not { } asked || time.GetElapsedTime(asked) > RenewEvery)
        {
            var now = time.GetUtcNow();
            _holds = await warehouse.WriteAsync(session => LeaseStore.TryHoldAsync(session, Lease, _holder, now, now + LeaseTime), cancellationToken)
                .ConfigureAwait(false);
            _askedAt = time.GetTimestamp();
        }

        return _holds;
    }

    private async Task GiveBackAsync(CancellationToken cancellationToken)
    {
        if (_holds)
        {
            _holds = false;
            _askedAt = null;
            await warehouse.WriteAsync(session => LeaseStore.GiveBackAsync(session, Lease, _holder), cancellationToken).ConfigureAwait(false);
        }
    }

    private Task ReopenForgottenAsync(CancellationToken cancellationToken) => warehouse.WriteAsync(
        async session =>
        {
            foreach (var consumer in consumers.Entries)
            {
                await OutboxStore.ReopenUnhandledAsync(session, consumer.MessageType, consumer.ConsumerName).ConfigureAwait(false);
            }
        },
        cancellationToken);

    private async Task<int> RelayBatchAsync(CancellationToken cancellationToken)
    {
        var messages = await warehouse.ReadAsync(session => OutboxStore.ListUnpublishedAsync(session, _types, BatchSize), cancellationToken)
            .ConfigureAwait(false);
        foreach (var window in messages.Chunk(transport.InFlight))
        {
            await RelayWindowAsync(window, cancellationToken).ConfigureAwait(false);
        }

        return messages.Count;
    }

    /// <summary>Starts them in order and marks those that arrived, whatever became of the others.</summary>
    private async Task RelayWindowAsync(OutboxMessage[] window, CancellationToken cancellationToken)
    {
        var publishing = window.Select(message => PublishAsync(message, cancellationToken)).ToList();
        try
        {
            await Task.WhenAll(publishing).ConfigureAwait(false);
        }
        finally
        {
            var arrived = window.Zip(publishing).Where(pair => pair.Second.IsCompletedSuccessfully).Select(pair => pair.First.Position).ToList();
            if (arrived.Count > 0)
            {
                CrashPoint.Passed(DurableStep.MessagesPublished);
                await warehouse.WriteAsync(
                    session => OutboxStore.MarkPublishedAsync(session, arrived, time.GetUtcNow()), CancellationToken.None).ConfigureAwait(false);
            }
        }
    }

    private async Task PublishAsync(OutboxMessage message, CancellationToken cancellationToken)
    {
        var type = MessageTypes.Find(message.Type)
            ?? throw new InvalidOperationException($"The outbox holds a '{message.Type}', which this program does not know; run the newer program.");
        await bus.PublishAsync(JsonSerializer.Deserialize(message.Body, type)!, type, message.MessageId, cancellationToken).ConfigureAwait(false);
    }
}
