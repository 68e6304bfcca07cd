using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Routing;
using LabPipeline.Warehouse;
using MassTransit;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Writes down which channels are owed an alert.</summary>
public sealed class QcAlertRaisedConsumer(
    LabWarehouse warehouse, RelaySignal relay, DeliverySignal signal, ChannelSet channels, TimeProvider time)
    : OnceConsumer<QcAlertRaised>(warehouse, relay, time)
{
    public const string Endpoint = "notifier-qc-alert-raised";

    protected override string ConsumerName => Endpoint;

    // Waking inside the transaction would let the couriers look before the rows are there.
    public override async Task Consume(ConsumeContext<QcAlertRaised> context)
    {
        await base.Consume(context).ConfigureAwait(false);
        signal.Wake();
    }

    protected override async Task HandleAsync(QcAlertRaised message, WarehouseSession session, DateTimeOffset now)
    {
        var standing = await DeliveryStore.FindStandingAsync(session, message.AlertId).ConfigureAwait(false)
            ?? throw new InvalidOperationException(
                $"Found no alert {message.AlertId} in the warehouse, which a message says was raised; expected it there before the message.");
        var level = AlertLevels.Parse(message.Level);
        var isOver = standing.IsOver(message.TimesRaised);
        foreach (var delivery in RaisingPlan.Of(message.AlertId, message.TimesRaised, level, isOver, channels.Policies, now))
        {
            await DeliveryStore.AddAsync(session, delivery).ConfigureAwait(false);
        }
    }
}
