using MassTransit;

namespace LabPipeline.Hosting.Bus;

/// <summary>A bus in memory; it lives as long as the process.</summary>
internal sealed class InProcessLine : IBusLine
{
    private readonly CancellationTokenSource _stopped = new();
    private readonly IBusControl _bus;

    private readonly BusPatience _patience;
    private readonly TimeProvider _time;

    public InProcessLine(IReadOnlyList<IEndpointConsumer> consumers, BusPatience patience, TimeProvider time)
    {
        _patience = patience;
        _time = time;
        _bus = MassTransit.Bus.Factory.CreateUsingInMemory(transport =>
        {
            foreach (var consumer in consumers)
            {
                transport.ReceiveEndpoint(consumer.Endpoint.Name, endpoint => consumer.Attach(endpoint, new EndpointPulse(time), _stopped.Token));
            }
        });
    }

    public string? Blocked => null;

    public Task StartAsync(CancellationToken cancellationToken) => _bus.StartAsync(cancellationToken);

    public Task PublishAsync(object message, Type type, Guid messageId, CancellationToken cancellationToken) =>
        _bus.Publish(message, type, context => context.MessageId = messageId, cancellationToken);

    public void Doubt(string reason)
    {
        // Memory answers or the process is gone; another bus would only forget what this one holds.
    }

    public async Task<string> WatchAsync(CancellationToken cancellationToken)
    {
        await Task.Delay(Timeout.InfiniteTimeSpan, cancellationToken).ConfigureAwait(false);
        return "";
    }

    public async Task StopAsync(bool gracefully)
    {
        await _stopped.CancelAsync().ConfigureAwait(false);
        await _bus.StopAsync(CancellationToken.None).WaitAsync(_patience.Stop, _time).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }

    public void Dispose() => _stopped.Dispose();
}
