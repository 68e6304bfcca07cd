using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Routing;
using LabPipeline.Warehouse;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Sees to it that a channel which is not reached turns red on every other one, and that an alert nobody has acknowledged is told again.</summary>
public sealed class DeliveryWatch(ChannelSet channels, LabWarehouse warehouse, DeliverySignal signal, TimeProvider time, ILogger<DeliveryWatch> log)
{
    /// <summary>An alert owed for longer is told on the other channels as undelivered.</summary>
    public static readonly TimeSpan UndeliveredAfter = TimeSpan.FromMinutes(10);

    private const string NeverTold = "the raising was never told on this channel";

    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(30);

    // Older failures have been told long ago; looking at them again would cost more each season.
    private static readonly TimeSpan LookBack = RetrySchedule.GiveUpAfter + TimeSpan.FromDays(5);

    private static readonly SqlText InsertUndelivered = SqlText.Load<DeliveryWatch>("insert-undelivered");
    private static readonly SqlText InsertReminders = SqlText.Load<DeliveryWatch>("insert-reminders");
    private static readonly SqlText RenewReminders = SqlText.Load<DeliveryWatch>("renew-reminders");
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

    /// <summary>Writes down what has to be told about deliveries that are late or failed, and about alerts nobody has seen to.</summary>
    public async Task LookAsync(CancellationToken cancellationToken)
    {
        var (undelivered, reminders) = await warehouse.WriteAsync(
            async session =>
            {
                var now = time.GetUtcNow();
                return await ParcelClaim.TryHoldLeaseAsync(session, now).ConfigureAwait(false)
                    ? await WriteAsync(session, now).ConfigureAwait(false)
                    : (0, 0);
            },
            cancellationToken).ConfigureAwait(false);
        if (undelivered > 0)
        {
            log.LogError("AlertsUndelivered {Count}", undelivered);
        }

        if (undelivered + reminders > 0)
        {
            signal.Wake();
        }
    }

    private async Task<(int Undelivered, int Reminders)> WriteAsync(WarehouseSession session, DateTimeOffset now)
    {
        await session.ExecuteAsync(HoldBackOrphans, new { reason = NeverTold }).ConfigureAwait(false);
        var undelivered = 0;
        var reminders = 0;
        foreach (var channel in channels.Policies)
        {
            var quietUntil = channel.DueAt(now, AlertLevel.Hold);
            undelivered += await session.ExecuteAsync(
                InsertUndelivered,
                new { channel = channel.Name, now, quietUntil, owedBefore = now - UndeliveredAfter, since = now - LookBack }).ConfigureAwait(false);
            if (channel.RemindAfter is not null || channel.EscalateAfter is not null)
            {
                var due = new
                {
                    channel = channel.Name,
                    now,
                    quietUntil,
                    remindBefore = now - channel.RemindAfter,
                    escalateBefore = now - channel.EscalateAfter,
                };
                reminders += await session.ExecuteAsync(RenewReminders, due).ConfigureAwait(false);
                reminders += await session.ExecuteAsync(InsertReminders, due).ConfigureAwait(false);
            }
        }

        return (undelivered, reminders);
    }
}
