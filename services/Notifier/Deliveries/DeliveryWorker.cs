using Microsoft.Extensions.Hosting;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Runs the couriers of all channels side by side, and the watch over them.</summary>
public sealed class DeliveryWorker(IEnumerable<ChannelCourier> couriers, DeliveryWatch watch) : BackgroundService
{
    private readonly IReadOnlyList<ChannelCourier> _couriers = [.. couriers];

    /// <summary>One round: what is late is written down, then every channel sends what it may.</summary>
    public async Task DeliverDueAsync(CancellationToken cancellationToken)
    {
        await watch.LookAsync(cancellationToken).ConfigureAwait(false);
        await Task.WhenAll(_couriers.Select(courier => courier.DeliverDueAsync(cancellationToken))).ConfigureAwait(false);
    }

    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll([.. _couriers.Select(courier => courier.RunAsync(stoppingToken)), watch.RunAsync(stoppingToken)]);
}
