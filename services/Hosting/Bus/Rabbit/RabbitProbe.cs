using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Logging;
using RabbitMQ.Client;
using RabbitMQ.Client.Exceptions;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>A connection of its own beside the bus: declares the topology, asks the broker about queues, and empties the dead letters into the warehouse.</summary>
internal sealed class RabbitProbe(RabbitAddress address, RabbitSockets sockets, LabWarehouse warehouse, BusPatience patience, TimeProvider time, ILogger log)
{
    private const ushort NotFound = 404;

    private IConnection? _connection;
    private volatile string? _blocked;

    /// <summary>The broker's own words when it takes no messages for lack of memory or disk.</summary>
    public string? Blocked => _blocked;

    /// <summary>Connects and declares everything; fails at once when no broker listens.</summary>
    public async Task OpenAsync(CancellationToken cancellationToken)
    {
        _connection = await address.Factory("probe", sockets).CreateConnectionAsync(cancellationToken).ConfigureAwait(false);
        _connection.ConnectionBlockedAsync += (_, blocked) =>
        {
            _blocked = $"the broker takes no messages: {blocked.Reason}";
            log.LogWarning("BrokerBlocked {Reason}", blocked.Reason);
            return Task.CompletedTask;
        };
        _connection.ConnectionUnblockedAsync += (_, _) =>
        {
            _blocked = null;
            log.LogInformation("BrokerUnblocked");
            return Task.CompletedTask;
        };
        await DeclareAsync(cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Declares the topology: repeatable, and the cure when somebody deleted a part of it.</summary>
    public Task DeclareAsync(CancellationToken cancellationToken) => AskAsync(
        async channel =>
        {
            await RabbitTopology.DeclareAsync(channel, cancellationToken).ConfigureAwait(false);
            return true;
        },
        cancellationToken);

    /// <summary>The broker tells only publishers that it is blocked, so the probe publishes: to nobody, and nobody minds.</summary>
    public Task TouchAsync(CancellationToken cancellationToken) => AskAsync(
        async channel =>
        {
            await channel.BasicPublishAsync("", "nobody", ReadOnlyMemory<byte>.Empty, cancellationToken).ConfigureAwait(false);
            return true;
        },
        cancellationToken);

    /// <summary>What the broker says of <paramref name="queue"/>; null when it is gone.</summary>
    public async Task<QueueDeclareOk?> FindQueueAsync(string queue, CancellationToken cancellationToken)
    {
        try
        {
            return await AskAsync(channel => channel.QueueDeclarePassiveAsync(queue, cancellationToken), cancellationToken).ConfigureAwait(false);
        }
        catch (OperationInterruptedException exception) when (exception.ShutdownReason?.ReplyCode == NotFound)
        {
            return null;
        }
    }

    /// <summary>Parks every dead letter; each leaves the broker only when its row is committed.</summary>
    public Task ParkDeadLettersAsync(CancellationToken cancellationToken) => AskAsync(
        async channel =>
        {
            while (await channel.BasicGetAsync(RabbitTopology.DeadLetters, autoAck: false, cancellationToken).ConfigureAwait(false) is { } letter)
            {
                var parked = DeadLetter.Read(letter.BasicProperties, letter.Body, time.GetUtcNow());
                await warehouse.WriteAsync(session => ParkedMessageStore.ParkAsync(session, parked), cancellationToken).ConfigureAwait(false);
                await channel.BasicAckAsync(letter.DeliveryTag, multiple: false, cancellationToken).ConfigureAwait(false);
                log.LogError("DeadLetterParked {Endpoint} {MessageId}", parked.Endpoint, parked.MessageId);
            }

            return true;
        },
        cancellationToken);

    /// <summary>One question on a channel of its own, since a refused one closes its channel; bounded, since the client can wait for ever.</summary>
    private async Task<T> AskAsync<T>(Func<IChannel, Task<T>> ask, CancellationToken cancellationToken)
    {
        async Task<T> AskAsync()
        {
            var channel = await _connection!.CreateChannelAsync(cancellationToken: cancellationToken).ConfigureAwait(false);
            await using (channel.ConfigureAwait(false))
            {
                return await ask(channel).ConfigureAwait(false);
            }
        }

        return await AskAsync().WaitAsync(patience.Answer, time, cancellationToken).ConfigureAwait(false);
    }
}
