using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Routing;
using LabPipeline.Warehouse;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Sees to it that a channel which is not reached turns red on every other one.</summary>
public sealed class DeliveryWatch(ChannelSet channels, LabWarehouse warehouse, DeliverySignal signal, TimeProvider time, ILogger<DeliveryWatch> log)
{
    /// <summary>An alert owed for longer is told on the other channels as undelivered.</summary>
    public static readonly TimeSpan UndeliveredAfter = TimeSpan.FromMinutes(10);

    private const string NeverTold = "the raising was never told on this channel";

    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(30);

    // Older failures have been told long ago; looking at them again would cost more each season.
    private static readonly TimeSpan LookBack = RetrySchedule.GiveUpAfter + TimeSpan.FromDays(5);

    private static readonly SqlText InsertUndelivered = SqlText.Load<DeliveryWatch>("insert-undelivered");
    private static readonly SqlText HoldBackOrphans = SqlText.Load<DeliveryWatch>("hold-back-orphaned-clearings");

    public async Task RunAsync(CancellationToken cancellationToken)
    {
        while (!cancellationToken.IsCancellationRequested)
        {
            var ring = signal.Next;
            try
            {
                await LookAsync(cancellationToken).ConfigureAwait(false);
            }
            catch (Exception exception) when (!cancellationToken.IsCancellationRequested)
            {
                log.LogError(exception, "WatchInterrupted");
            }

            await Task.WhenAny(ring, Task.Delay(LookAgain, time, cancellationToken)).ConfigureAwait(false);
        }
    }

    /// <summary>Writes down what has to be told about deliveries that are late or failed.</summary>
    public async Task LookAsync(CancellationToken cancellationToken)
    {
        var written = await warehouse.WriteAsync(
            async session =>
            {
                var now = time.GetUtcNow();
                if (!await ParcelClaim.TryHoldLeaseAsync(session, now).ConfigureAwait(false))
                {
                    return 0;
                }

                await session.ExecuteAsync(HoldBackOrphans, new { reason = NeverTold }).ConfigureAwait(false);
                var rows = 0;
                foreach (var channel in channels.Policies)
                {
                    rows += await session.ExecuteAsync(InsertUndelivered, UndeliveredFor(channel, now)).ConfigureAwait(false);
                }

                return rows;
            },
            cancellationToken).ConfigureAwait(false);
        if (written > 0)
        {
            log.LogError("AlertsUndelivered {Count}", written);
            signal.Wake();
        }
    }

    private static object UndeliveredFor(ChannelPolicy channel, DateTimeOffset now) => new
    {
        channel = channel.Name,
        now,
        quietUntil = channel.DueAt(now, AlertLevel.Hold),
        owedBefore = now - UndeliveredAfter,
        since = now - LookBack,
    };
}
