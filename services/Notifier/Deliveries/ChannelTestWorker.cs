using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Messages;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Channels;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Sends the tests people ask for: each once, past courier and breaker, so that it delays no alert and the answer is that of the channel now.</summary>
/// <remarks>A stop between sending and writing down sends the test again, as with every delivery.</remarks>
public sealed class ChannelTestWorker(ChannelSet channels, LabWarehouse warehouse, TimeProvider time, ILogger<ChannelTestWorker> log) : BackgroundService
{
    /// <summary>A test that no notifier took up for so long tells nothing any more.</summary>
    public static readonly TimeSpan WaitsFor = TimeSpan.FromMinutes(10);

    private const string Service = "notifier";

    private const string NobodyTookIt = "no notifier took it up within 10 minutes";

    private const string NoSuchChannel = "the running notifier has no channel of this name";

    private const int LongestReason = 900;

    private static readonly TimeSpan LookAgain = TimeSpan.FromSeconds(2);

    /// <summary>Sends what waits.</summary>
    public async Task SendWaitingAsync(CancellationToken cancellationToken)
    {
        if ((await warehouse.ReadAsync(ChannelTestStore.ListWaitingAsync, cancellationToken).ConfigureAwait(false)).Count > 0)
        {
            await Task.WhenAll((await TakeAsync(cancellationToken).ConfigureAwait(false)).Select(test => TestAsync(test, cancellationToken))).ConfigureAwait(false);
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await SendWaitingAsync(stoppingToken).ConfigureAwait(false);
            }
            catch (Exception exception) when (!stoppingToken.IsCancellationRequested)
            {
                log.LogError(exception, "ChannelTestInterrupted");
            }

            await Task.Delay(LookAgain, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    /// <summary>Of two notifiers the one that delivers answers.</summary>
    private Task<IReadOnlyList<ChannelTest>> TakeAsync(CancellationToken cancellationToken) => warehouse.WriteAsync(
        async session => await ParcelClaim.TryHoldLeaseAsync(session, time.GetUtcNow()).ConfigureAwait(false)
            ? await ChannelTestStore.ListWaitingAsync(session).ConfigureAwait(false)
            : [],
        cancellationToken);

    private async Task TestAsync(ChannelTest test, CancellationToken cancellationToken)
    {
        var channel = channels.All.FirstOrDefault(candidate => candidate.Policy.Name == test.Channel);
        var reason = time.GetUtcNow() - test.AskedAt > WaitsFor ? NobodyTookIt
            : channel is null ? NoSuchChannel
            : await SendAsync(channel, test, cancellationToken).ConfigureAwait(false);

        // What was sent is marked even while the program is being stopped.
        await warehouse.WriteAsync(session => ChannelTestStore.EndAsync(session, test, reason, Service, time.GetUtcNow()), CancellationToken.None).ConfigureAwait(false);
        log.LogInformation("ChannelTested {Channel} {Reason}", test.Channel, reason ?? ChannelTestStates.Delivered);
    }

    /// <returns>Why it was not taken; null when it was.</returns>
    private async Task<string?> SendAsync(IAlertChannel channel, ChannelTest test, CancellationToken cancellationToken)
    {
        using var limit = new CancellationTokenSource(channel.Policy.Timeout, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, cancellationToken);
        try
        {
            var outcome = await channel.SendAsync([NoticeWriter.Test(test)], either.Token).ConfigureAwait(false);
            return outcome.Result == SendResult.Sent ? null : NoticeText.OneLine(outcome.Reason, LongestReason);
        }
        catch (Exception exception) when (!cancellationToken.IsCancellationRequested)
        {
            return limit.IsCancellationRequested
                ? FormattableString.Invariant($"no answer within {channel.Policy.Timeout.TotalSeconds:0} s")
                : NoticeText.OneLine($"{exception.GetType().Name}: {exception.Message}", LongestReason);
        }
    }
}
