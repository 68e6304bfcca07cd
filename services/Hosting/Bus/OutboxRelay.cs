using System.Text.Json;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using MassTransit;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Hosting.Bus;

/// <summary>Publishes what the outbox holds, in order, under each row's own message id, and marks it afterwards.</summary>
/// <remarks>
/// The bus ends at this process, so only messages somebody here consumes are taken: beside others on the same warehouse, each process
/// takes its own. A crash between publishing and marking sends a message twice; the consumers' inboxes make that harmless.
/// </remarks>
public sealed class OutboxRelay(
    LabWarehouse warehouse, IBus bus, RelaySignal signal, ConsumerCatalogue consumers, TimeProvider time, ILogger<OutboxRelay> log)
    : BackgroundService
{
    private const int BatchSize = 100;

    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(2);

    // A blocked broker can hold a publish for as long as it likes; the outbox keeps the message meanwhile.
    private static readonly TimeSpan PublishLimit = TimeSpan.FromSeconds(10);

    private readonly IReadOnlyCollection<string> _consumed = [.. consumers.Entries.Select(entry => entry.MessageType).Distinct()];

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (_consumed.Count == 0)
        {
            return;
        }

        await ReopenForgottenAsync(stoppingToken).ConfigureAwait(false);
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                while (await RelayBatchAsync(stoppingToken).ConfigureAwait(false) == BatchSize)
                {
                    log.LogDebug("RelayContinues");
                }
            }
            catch (Exception exception) when (exception is not OperationCanceledException || !stoppingToken.IsCancellationRequested)
            {
                log.LogWarning(exception, "RelayDelayed");
            }

            await signal.WaitAsync(LookAgain, stoppingToken).ConfigureAwait(false);
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
        var messages = await warehouse.ReadAsync(session => OutboxStore.ListUnpublishedAsync(session, _consumed, BatchSize), cancellationToken)
            .ConfigureAwait(false);
        var published = new List<long>(messages.Count);
        try
        {
            foreach (var message in messages)
            {
                await PublishAsync(message, cancellationToken).ConfigureAwait(false);
                published.Add(message.Position);
            }
        }
        finally
        {
            if (published.Count > 0)
            {
                await warehouse.WriteAsync(
                    session => OutboxStore.MarkPublishedAsync(session, published, time.GetUtcNow()), CancellationToken.None).ConfigureAwait(false);
            }
        }

        return messages.Count;
    }

    private async Task PublishAsync(OutboxMessage message, CancellationToken cancellationToken)
    {
        var type = MessageTypes.Find(message.Type)
            ?? throw new InvalidOperationException($"The outbox holds a '{message.Type}', which this program does not know; run the newer program.");
        var body = JsonSerializer.Deserialize(message.Body, type)!;
        await bus.Publish(body, type, context => context.MessageId = message.MessageId, cancellationToken)
            .WaitAsync(PublishLimit, time, cancellationToken).ConfigureAwait(false);
    }
}
