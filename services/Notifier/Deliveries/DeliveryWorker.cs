using LabPipeline.Warehouse;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Runs the couriers of all channels side by side, and the watch over them.</summary>
public sealed class DeliveryWorker(
    IEnumerable<ChannelCourier> couriers, DeliveryWatch watch, LabWarehouse warehouse, TimeProvider time) : BackgroundService
{
    private readonly IReadOnlyList<ChannelCourier> _couriers = [.. couriers];

    /// <summary>Takes up what a killed predecessor had claimed, instead of waiting for its claims to run out.</summary>
    public override async Task StartAsync(CancellationToken cancellationToken)
    {
        await warehouse.WriteAsync(
            async session =>
            {
                var now = time.GetUtcNow();
                if (await ParcelClaim.TryHoldLeaseAsync(session, now).ConfigureAwait(false))
                {
                    await DeliveryStore.ReleaseClaimsAsync(session, now).ConfigureAwait(false);
                }
            },
            cancellationToken).ConfigureAwait(false);
        await base.StartAsync(cancellationToken).ConfigureAwait(false);
    }

    /// <summary>One round: what is late is written down, then every channel sends what it may.</summary>
    public async Task DeliverDueAsync(CancellationToken cancellationToken)
    {
        await watch.LookAsync(cancellationToken).ConfigureAwait(false);
        await Task.WhenAll(_couriers.Select(courier => courier.DeliverDueAsync(cancellationToken))).ConfigureAwait(false);
    }

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll([.. _couriers.Select(courier => courier.RunAsync(stoppingToken)), watch.RunAsync(stoppingToken)]);
}
