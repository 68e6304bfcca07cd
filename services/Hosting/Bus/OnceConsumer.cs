using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using MassTransit;

namespace LabPipeline.Hosting.Bus;

/// <summary>Handles each message once in effect: inbox row, effect and outgoing messages are one transaction.</summary>
public abstract class OnceConsumer<TMessage>(LabWarehouse warehouse, RelaySignal relay, TimeProvider time) : IConsumer<TMessage>
    where TMessage : class
{
    /// <summary>The name under which handled messages are remembered; the same as the endpoint's.</summary>
    protected abstract string ConsumerName { get; }

    public virtual async Task Consume(ConsumeContext<TMessage> context)
    {
        var messageId = context.MessageId
            ?? throw new InvalidOperationException($"A {typeof(TMessage).Name} came without a message id; it was not sent by the relay.");
        await warehouse.WriteAsync(
            async session =>
            {
                var now = time.GetUtcNow();
                if (await InboxStore.TryEnterAsync(session, messageId, ConsumerName, now).ConfigureAwait(false))
                {
                    await HandleAsync(context.Message, session, now).ConfigureAwait(false);
                }
            },
            context.CancellationToken).ConfigureAwait(false);
        relay.Wake();
    }

    /// <summary>The effect; everything written through <paramref name="session"/> is committed together with the inbox row.</summary>
    protected abstract Task HandleAsync(TMessage message, WarehouseSession session, DateTimeOffset now);
}
