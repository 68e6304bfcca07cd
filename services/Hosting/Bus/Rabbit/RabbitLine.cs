using System.Globalization;
using MassTransit;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>One life of the bus over the broker.</summary>
/// <remarks>
/// Publishing and consuming have a connection each: a broker short of memory or disk stops reading from connections that publish, and
/// consumers must go on to drain it.
/// </remarks>
internal sealed class RabbitLine : IBusLine
{
    // More would only wait for the one writer of this process, and would all count as delivered when the process is killed.
    private const ushort Prefetch = 8;

    private readonly CancellationTokenSource _stopped = new();
    private readonly TaskCompletionSource<string> _doubt = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CanaryCage _cage = new();
    private readonly Dictionary<string, EndpointPulse> _pulses = [];
    private readonly string _canaryQueue = $"lab-canary-{Environment.MachineName}-{Environment.ProcessId}-{Guid.NewGuid():N}";
    private readonly RabbitSockets _sockets;
    private readonly RabbitProbe _probe;
    private readonly BusPatience _patience;
    private readonly TimeProvider _time;
    private readonly ILogger _log;
    private readonly IBusControl _outgoing;
    private readonly IBusControl _incoming;
    private volatile bool _returned;

    public RabbitLine(
        IReadOnlyList<IEndpointConsumer> consumers, RabbitAddress address, RabbitSockets sockets, RabbitProbe probe, BusPatience patience, TimeProvider time, ILogger log)
    {
        _sockets = sockets;
        _probe = probe;
        _patience = patience;
        _time = time;
        _log = log;
        _outgoing = MassTransit.Bus.Factory.CreateUsingRabbitMq(bus => address.Configure(bus, "outgoing", sockets));
        _incoming = MassTransit.Bus.Factory.CreateUsingRabbitMq(bus =>
        {
            address.Configure(bus, "incoming", sockets);
            foreach (var consumer in consumers)
            {
                Receive(bus, consumer);
            }

            ReceiveCanary(bus);
        });
    }

    public string? Blocked => _probe.Blocked;

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        await _probe.OpenAsync(cancellationToken).ConfigureAwait(false);
        await _incoming.StartAsync(cancellationToken).ConfigureAwait(false);
        await _outgoing.StartAsync(cancellationToken).ConfigureAwait(false);
        if (!await FlyAsync(cancellationToken).ConfigureAwait(false))
        {
            _log.LogWarning("BusStartsBlocked {Reason}", Blocked);
        }
    }

    public async Task PublishAsync(object message, Type type, Guid messageId, CancellationToken cancellationToken)
    {
        try
        {
            await _outgoing.Publish(message, type, context => Prepare(context, messageId), cancellationToken).ConfigureAwait(false);
        }
        catch (MessageReturnedException)
        {
            _returned = true;
            throw;
        }
    }

    public void Doubt(string reason)
    {
        if (Blocked is null)
        {
            _doubt.TrySetResult(reason);
        }
    }

    public async Task<string> WatchAsync(CancellationToken cancellationToken)
    {
        using var timer = new PeriodicTimer(_patience.LookEvery, _time);
        while (true)
        {
            var next = timer.WaitForNextTickAsync(cancellationToken).AsTask();
            if (await Task.WhenAny(next, _doubt.Task).ConfigureAwait(false) == _doubt.Task)
            {
                return await _doubt.Task.ConfigureAwait(false);
            }

            await next.ConfigureAwait(false);
            if (Blocked is null && await LookAsync(cancellationToken).ConfigureAwait(false) is { } reason)
            {
                return reason;
            }
        }
    }

    public async Task StopAsync(bool gracefully)
    {
        await _stopped.CancelAsync().ConfigureAwait(false);
        if (!gracefully)
        {
            _sockets.Cut();
        }

        var stopping = Task.WhenAll(_incoming.StopAsync(CancellationToken.None), _outgoing.StopAsync(CancellationToken.None));
        await stopping.WaitAsync(_patience.Stop, _time).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _sockets.Cut();
        if (!stopping.IsCompleted)
        {
            _log.LogWarning("BusAbandoned {Reason}", "the client did not stop in time; its connections are cut");
        }
    }

    public void Dispose() => _stopped.Dispose();

    private static void Prepare(PublishContext context, Guid messageId)
    {
        context.MessageId = messageId;

        // Without it the broker confirms a message that no queue takes, and it is gone.
        context.GetPayload<RabbitMqSendContext>().Mandatory = true;
    }

    private void Receive(IRabbitMqBusFactoryConfigurator bus, IEndpointConsumer consumer)
    {
        var pulse = new EndpointPulse(_time);
        _pulses.Add(consumer.Endpoint.Name, pulse);
        bus.ReceiveEndpoint(consumer.Endpoint.Name, endpoint =>
        {
            endpoint.SetQuorumQueue();
            foreach (var (key, value) in RabbitTopology.QueueArguments)
            {
                endpoint.SetQueueArgument(key, value);
            }

            endpoint.PrefetchCount = Prefetch;
            endpoint.ConfigureConsumeTopology = false;
            endpoint.PublishFaults = false;

            // What cannot even be read goes back to the broker, which counts and at last moves it to the dead letters.
            endpoint.RethrowFaultedMessages();
            endpoint.ThrowOnSkippedMessages();
            consumer.Attach(endpoint, pulse, _stopped.Token);
        });
    }

    private void ReceiveCanary(IRabbitMqBusFactoryConfigurator bus) => bus.ReceiveEndpoint(_canaryQueue, endpoint =>
    {
        endpoint.AutoDelete = true;
        endpoint.ConfigureConsumeTopology = false;
        endpoint.Handler<Canary>(context =>
        {
            _cage.Return(context.Message);
            return Task.CompletedTask;
        });
    });

    /// <summary>Looks once; a probe that gets no answer is as bad as a canary that does not come back.</summary>
    private async Task<string?> LookAsync(CancellationToken cancellationToken)
    {
        try
        {
            await _probe.TouchAsync(cancellationToken).ConfigureAwait(false);
            return await FlyAsync(cancellationToken).ConfigureAwait(false) ? await LookAtQueuesAsync(cancellationToken).ConfigureAwait(false) : null;
        }
        catch (Exception exception) when (!cancellationToken.IsCancellationRequested)
        {
            return Blocked is null ? $"{exception.GetType().Name}: {exception.Message}" : null;
        }
    }

    /// <returns>Whether the canary came back; it does not while the broker takes no messages.</returns>
    private async Task<bool> FlyAsync(CancellationToken cancellationToken)
    {
        var (canary, back) = _cage.Release();
        try
        {
            var target = await _outgoing.GetSendEndpoint(new Uri($"exchange:{_canaryQueue}?autodelete=true")).WaitAsync(_patience.Answer, _time, cancellationToken).ConfigureAwait(false);
            await target.Send(canary, cancellationToken).WaitAsync(_patience.Answer, _time, cancellationToken).ConfigureAwait(false);
            await back.WaitAsync(_patience.Answer, _time, cancellationToken).ConfigureAwait(false);
            return true;
        }
        catch (TimeoutException) when (Blocked is not null)
        {
            return false;
        }
        catch (TimeoutException)
        {
            throw new TimeoutException(string.Create(CultureInfo.InvariantCulture, $"the canary did not come back within {_patience.Answer.TotalSeconds:0} s"));
        }
    }

    private async Task<string?> LookAtQueuesAsync(CancellationToken cancellationToken)
    {
        if (_returned)
        {
            _returned = false;
            await _probe.DeclareAsync(cancellationToken).ConfigureAwait(false);
        }

        foreach (var (queue, pulse) in _pulses)
        {
            var inHand = pulse.InHand;
            var idle = pulse.Idle;
            if (await _probe.FindQueueAsync(queue, cancellationToken).ConfigureAwait(false) is not { } found)
            {
                return $"queue {queue} is gone";
            }

            if (QueueReview.Decide(queue, found.MessageCount, found.ConsumerCount, inHand, idle, _patience.Stall) is { } reason)
            {
                return reason;
            }
        }

        await _probe.ParkDeadLettersAsync(cancellationToken).ConfigureAwait(false);
        return null;
    }
}
