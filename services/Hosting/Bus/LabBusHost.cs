using LabPipeline.Warehouse;
using MassTransit;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Hosting.Bus;

/// <summary>Owns the bus: builds it, watches it, and builds a new one when it no longer answers, without a restart of the process.</summary>
/// <remarks>The client of the broker can hang for good after the broker was restarted under load; waiting for it to recover is not enough.</remarks>
public sealed class LabBusHost(
    IBusTransport transport,
    RunningHandlers handlers,
    LabWarehouse warehouse,
    IHostApplicationLifetime lifetime,
    BusPatience patience,
    TimeProvider time,
    ILoggerFactory logs) : BackgroundService
{
    private static readonly TimeSpan FirstPause = TimeSpan.FromMilliseconds(500);

    private readonly ILogger _log = logs.CreateLogger<LabBusHost>();
    private readonly Lock _guard = new();
    private TaskCompletionSource<IBusLine> _line = NewLine();
    private string _reason = "not started yet";
    private DateTimeOffset _since = time.GetUtcNow();
    private int _rebuilds;

    public BusCondition Condition
    {
        get
        {
            lock (_guard)
            {
                var blocked = _line.Task.IsCompletedSuccessfully ? _line.Task.Result.Blocked : null;
                return new BusCondition(_line.Task.IsCompletedSuccessfully && blocked is null, blocked ?? _reason, _since, _rebuilds);
            }
        }
    }

    /// <summary>Whether messages can be published now, or could be but for the broker's own refusal.</summary>
    public bool IsUp => Current().IsCompletedSuccessfully;

    public Task WaitUntilUpAsync(CancellationToken cancellationToken) => Current().WaitAsync(cancellationToken);

    /// <summary>Ends when the broker has the message safely, within bounded time.</summary>
    /// <exception cref="BusDownException">There is no bus at the moment.</exception>
    /// <exception cref="TimeoutException">The broker did not answer; the message may have arrived.</exception>
    public async Task PublishAsync(object message, Type type, Guid messageId, CancellationToken cancellationToken)
    {
        var current = Current();
        var line = current.IsCompletedSuccessfully ? await current.ConfigureAwait(false) : throw new BusDownException("The bus is down; the outbox keeps the message.");
        try
        {
            await line.PublishAsync(message, type, messageId, cancellationToken).WaitAsync(patience.Publish, time, cancellationToken).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (!cancellationToken.IsCancellationRequested)
        {
            throw new BusDownException("The bus went down meanwhile; the message may have arrived, and the outbox keeps it.");
        }
        catch (TimeoutException)
        {
            line.Doubt($"a publish was not answered within {patience.Publish.TotalSeconds:0} s");
            throw;
        }
    }

    public override Task StartAsync(CancellationToken cancellationToken)
    {
        // Services that stop write a last time; one handler that hangs in its transaction must not hold them all.
        lifetime.ApplicationStopping.Register(() => warehouse.CloseWithin(patience.LastWrites));
        return base.StartAsync(cancellationToken);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        LogContext.ConfigureCurrentLogContext(logs);
        var pause = FirstPause;
        while (!stoppingToken.IsCancellationRequested)
        {
            var wasUp = await LiveAsync(stoppingToken).ConfigureAwait(false);
            pause = wasUp ? FirstPause : TimeSpan.FromTicks(Math.Min(2 * pause.Ticks, patience.LongestRebuildPause.Ticks));
            await Task.Delay(pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private static TaskCompletionSource<IBusLine> NewLine() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private Task<IBusLine> Current()
    {
        lock (_guard)
        {
            return _line.Task;
        }
    }

    /// <summary>One line from start to stop.</summary>
    /// <returns>Whether it ever stood.</returns>
    private async Task<bool> LiveAsync(CancellationToken stoppingToken)
    {
        using var line = transport.Open();
        var wasUp = false;
        try
        {
            await line.StartAsync(stoppingToken).WaitAsync(patience.Start, time, stoppingToken).ConfigureAwait(false);
            wasUp = true;
            GoUp(line);
            GoDown(await line.WatchAsync(stoppingToken).ConfigureAwait(false));
        }
        catch (Exception exception) when (!stoppingToken.IsCancellationRequested)
        {
            GoDown($"{exception.GetType().Name}: {exception.Message}");
        }
        catch (Exception exception)
        {
            // The process stops, in the midst of whatever the line was about.
            _log.LogDebug(exception, "BusStops");
        }

        await line.StopAsync(gracefully: stoppingToken.IsCancellationRequested).ConfigureAwait(false);
        foreach (var handler in handlers.List())
        {
            _log.LogWarning("HandlerStillRuns {Endpoint} {MessageId} {Since}", handler.Endpoint, handler.MessageId, handler.Since);
        }

        return wasUp;
    }

    private void GoUp(IBusLine line)
    {
        lock (_guard)
        {
            _reason = "";
            _since = time.GetUtcNow();
            _line.SetResult(line);
        }

        _log.LogInformation("BusUp {Rebuilds}", _rebuilds);
    }

    private void GoDown(string reason)
    {
        _log.LogWarning("BusDown {Reason}", reason);
        lock (_guard)
        {
            if (_line.Task.IsCompletedSuccessfully)
            {
                _line = NewLine();
                _since = time.GetUtcNow();
                _rebuilds++;
            }

            _reason = reason;
        }
    }
}
