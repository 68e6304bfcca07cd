using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Routing;
using LabPipeline.Warehouse;
using MassTransit;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Tells that an alert cleared, to those who were told of it; what came and went untold stays untold.</summary>
/// <remarks>When the clearing overtakes its raising there are no rows yet; the raising then finds the alert over.</remarks>
public sealed class QcAlertClearedConsumer(
    LabWarehouse warehouse, RelaySignal relay, DeliverySignal signal, ChannelSet channels, TimeProvider time)
    : OnceConsumer<QcAlertCleared>(warehouse, relay, time)
{
    public const string Endpoint = "notifier-qc-alert-cleared";

    protected override string ConsumerName => Endpoint;

    // Waking inside the transaction would let the couriers look before the rows are there.
    public override async Task Consume(ConsumeContext<QcAlertCleared> context)
    {
        await base.Consume(context).ConfigureAwait(false);
        signal.Wake();
    }

    protected override async Task HandleAsync(QcAlertCleared message, WarehouseSession session, DateTimeOffset now)
    {
        foreach (var raised in await DeliveryStore.ListRaisedAsync(session, message.AlertId, message.TimesRaised).ConfigureAwait(false))
        {
            await HandleAsync(message, raised, session, now).ConfigureAwait(false);
        }
    }

    private async Task HandleAsync(QcAlertCleared message, RaisedDelivery raised, WarehouseSession session, DateTimeOffset now)
    {
        var step = ClearingPlan.Of(raised, channels.IsCompleteRecord(raised.Channel));
        if (step == ClearingStep.HoldBackBoth
            && !await DeliveryStore.TryHoldBackAsync(session, raised.DeliveryId, RaisingPlan.CameAndWent).ConfigureAwait(false))
        {
            step = ClearingStep.Tell;
        }

        if (step == ClearingStep.Nothing)
        {
            return;
        }

        var policy = channels.Policies.FirstOrDefault(candidate => candidate.Name == raised.Channel);
        await DeliveryStore.AddAsync(session, new NewDelivery
        {
            AlertId = message.AlertId,
            TimesRaised = message.TimesRaised,
            Event = DeliveryEvents.Cleared,
            Channel = raised.Channel,
            Urgency = ClearingPlan.Urgency,
            State = step == ClearingStep.Tell ? DeliveryStates.Pending : DeliveryStates.HeldBack,
            Reason = step == ClearingStep.Tell ? null : RaisingPlan.CameAndWent,
            CreatedAt = now,
        }.Scheduled(policy, AlertLevel.Note)).ConfigureAwait(false);
    }
}
