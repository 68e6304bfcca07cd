using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Messages;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Durability;
using Microsoft.Extensions.Logging;
using Polly;
using Polly.CircuitBreaker;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Delivers for one channel: claim, send, mark. Each channel has its own, so a slow or dead target delays no other.</summary>
public sealed class ChannelCourier(
    IAlertChannel channel, LabWarehouse warehouse, DeliverySignal signal, TimeProvider time, Random random, ILogger<ChannelCourier> log)
{
    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(5);

    private readonly ResiliencePipeline<SendOutcome> _pipeline = ChannelPipeline.Build(channel.Policy.Timeout, time);

    private DateTimeOffset _pausedUntil = DateTimeOffset.MinValue;

    public async Task RunAsync(CancellationToken cancellationToken)
    {
        while (!cancellationToken.IsCancellationRequested)
        {
            var ring = signal.Next;
            try
            {
                await DeliverDueAsync(cancellationToken).ConfigureAwait(false);
            }
            catch (Exception exception) when (!cancellationToken.IsCancellationRequested)
            {
                log.LogError(exception, "DeliveryInterrupted {Channel}", channel.Policy.Name);
            }

            await Task.WhenAny(ring, Task.Delay(LookAgain, time, cancellationToken)).ConfigureAwait(false);
        }
    }

    /// <summary>Sends what may be sent now.</summary>
    public async Task DeliverDueAsync(CancellationToken cancellationToken)
    {
        while (time.GetUtcNow() >= _pausedUntil && await TakeAsync(cancellationToken).ConfigureAwait(false) is { } parcel)
        {
            try
            {
                var outcome = await SendAsync(parcel, cancellationToken).ConfigureAwait(false);
                CrashPoint.Passed(DurableStep.NoticeSent);
                await FinishAsync(parcel, outcome).ConfigureAwait(false);
            }
            catch (BrokenCircuitException open)
            {
                _pausedUntil = time.GetUtcNow() + (open.RetryAfter ?? ChannelPipeline.Break);
                await MarkAsync(parcel, ParcelEnd.PutBack(time.GetUtcNow())).ConfigureAwait(false);
                log.LogWarning("ChannelPaused {Channel} {Until}", channel.Policy.Name, _pausedUntil);
            }
        }
    }

    private async Task<Parcel?> TakeAsync(CancellationToken cancellationToken)
    {
        var name = channel.Policy.Name;
        var isDue = await warehouse.ReadAsync(session => DeliveryStore.IsAnyDueAsync(session, name, time.GetUtcNow()), cancellationToken)
            .ConfigureAwait(false);
        return isDue
            ? await warehouse.WriteAsync(session => ParcelClaim.TakeAsync(session, channel.Policy, time.GetUtcNow()), cancellationToken)
                .ConfigureAwait(false)
            : null;
    }

    private async Task<SendOutcome> SendAsync(Parcel parcel, CancellationToken cancellationToken)
    {
        try
        {
            return await _pipeline.ExecuteAsync(
                async token => await channel.SendAsync(parcel.Notices, token).ConfigureAwait(false), cancellationToken).ConfigureAwait(false);
        }
        catch (Exception exception) when (exception is not BrokenCircuitException && !cancellationToken.IsCancellationRequested)
        {
            return SendOutcome.TryLater($"{exception.GetType().Name}: {exception.Message}");
        }
    }

    private async Task FinishAsync(Parcel parcel, SendOutcome outcome)
    {
        var marking = ParcelEnd.Of(parcel, outcome, time.GetUtcNow(), random);
        await MarkAsync(parcel, marking).ConfigureAwait(false);
        if (outcome.Result == SendResult.Gone)
        {
            // What waits stays pending, so it turns red elsewhere and goes out once the settings name a living target.
            _pausedUntil = DateTimeOffset.MaxValue;
            log.LogError("ChannelStopped {Channel} {Reason}", channel.Policy.Name, outcome.Reason);
        }

        var about = parcel.Notices[0] is AlertNotice alert ? alert.AlertId : ((DigestNotice)parcel.Notices[0]).FirstAlertId;
        switch (marking.State)
        {
            case DeliveryStates.Delivered:
                log.LogInformation("Delivered {Channel} {Alert} {Count} {Attempts}", channel.Policy.Name, about, parcel.Count, parcel.Attempts);
                break;
            case DeliveryStates.Failed:
                log.LogError("DeliveryFailed {Channel} {Alert} {Count} {Reason}", channel.Policy.Name, about, parcel.Count, marking.Error);
                signal.Wake();
                break;
            default:
                log.LogWarning(
                    "DeliveryDelayed {Channel} {Alert} {Count} {NextAttempt} {Reason}",
                    channel.Policy.Name, about, parcel.Count, marking.NextAttemptAt, marking.Error);
                break;
        }

    }

    // What was sent is marked even while the program is being stopped.
    private Task MarkAsync(Parcel parcel, Marking marking) => warehouse.WriteAsync(
        session => parcel.DigestId is { } digestId
            ? DigestStore.MarkAsync(session, channel.Policy.Name, digestId, marking)
            : DeliveryStore.MarkAsync(session, parcel.DeliveryIds, marking),
        CancellationToken.None);
}
