using System.Security.Cryptography;
using System.Text.Json;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Durability;
using LabPipeline.Warehouse.Machinery;
using MassTransit;
using Microsoft.Extensions.Logging;
using Polly;
using Polly.Retry;

namespace LabPipeline.Hosting.Bus;

/// <summary>Sees one delivery to its end: handled, or after some tries parked with its reason. It is the same on every bus.</summary>
/// <remarks>
/// A message that can neither be handled nor parked meets a warehouse that does not answer. It is kept in hand and tried again, so that an
/// outage of the warehouse parks nothing.
/// </remarks>
public sealed class MessageDelivery : IDisposable
{
    // Set by the broker from the second delivery on: how often the message was given back or left by a consumer that went.
    private const string ReturnsHeader = "x-delivery-count";

    private readonly LabWarehouse _warehouse;
    private readonly RunningHandlers _running;
    private readonly BusPatience _patience;
    private readonly TimeProvider _time;
    private readonly ILogger<MessageDelivery> _log;
    private readonly ResiliencePipeline _tries;
    private readonly Suspects _suspects;

    public MessageDelivery(LabWarehouse warehouse, RunningHandlers running, BusPatience patience, TimeProvider time, ILogger<MessageDelivery> log)
    {
        _warehouse = warehouse;
        _running = running;
        _patience = patience;
        _time = time;
        _log = log;
        _suspects = new Suspects(patience, time);
        _tries = new ResiliencePipelineBuilder { TimeProvider = time }
            .AddRetry(new RetryStrategyOptions
            {
                ShouldHandle = new PredicateBuilder().Handle<Exception>(),
                MaxRetryAttempts = patience.Retries,
                BackoffType = DelayBackoffType.Exponential,
                Delay = patience.FirstRetry,
                MaxDelay = patience.LongestRetry,
            })
            .Build();
    }

    /// <param name="context">The delivery.</param>
    /// <param name="endpoint">The queue it came from.</param>
    /// <param name="handle">Handles it once.</param>
    /// <param name="stopped">Cancelled when the bus is given up; the broker then delivers the message again.</param>
    public async Task HandleAsync<TMessage>(ConsumeContext<TMessage> context, string endpoint, Func<Task> handle, CancellationToken stopped)
        where TMessage : class
    {
        var returns = context.ReceiveContext.TransportHeaders.Get<long>(ReturnsHeader) ?? 0;
        Task RunAsync() => _running.RunAsync(endpoint, context.MessageId, handle);
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(stopped, context.CancellationToken);
        while (true)
        {
            try
            {
                await _tries.ExecuteAsync(
                    async token => await _suspects.HandleAsync(returns, RunAsync, token).ConfigureAwait(false), ended.Token).ConfigureAwait(false);
                CrashPoint.Passed(DurableStep.MessageHandled);
                return;
            }
            catch (Exception exception) when (!ended.IsCancellationRequested)
            {
                if (await TryParkAsync(context, endpoint, exception, ended.Token).ConfigureAwait(false))
                {
                    return;
                }
            }

            await Task.Delay(_patience.WarehousePause, _time, ended.Token).ConfigureAwait(false);
        }
    }

    public void Dispose() => _suspects.Dispose();

    private async Task<bool> TryParkAsync<TMessage>(ConsumeContext<TMessage> context, string endpoint, Exception exception, CancellationToken cancellationToken)
        where TMessage : class
    {
        var body = JsonSerializer.Serialize(context.Message);
        var parked = new ParkedMessage
        {
            MessageId = context.MessageId ?? new Guid(SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(body)).AsSpan(0, 16)),
            Endpoint = endpoint,
            Type = typeof(TMessage).FullName!,
            Body = body,
            Reason = $"{exception.GetType().Name}: {exception.Message}",
            ParkedAt = _time.GetUtcNow(),
        };
        try
        {
            await _warehouse.WriteAsync(session => ParkedMessageStore.ParkAsync(session, parked), cancellationToken).ConfigureAwait(false);
            _log.LogError(exception, "MessageParked {Endpoint} {MessageId}", endpoint, parked.MessageId);
            return true;
        }
        catch (Exception parking) when (!cancellationToken.IsCancellationRequested)
        {
            _log.LogWarning(parking, "MessageKeptInHand {Endpoint} {MessageId}", endpoint, parked.MessageId);
            return false;
        }
    }
}
