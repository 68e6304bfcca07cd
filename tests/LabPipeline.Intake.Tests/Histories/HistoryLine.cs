using LabPipeline.Hosting.Bus;

namespace LabPipeline.Intake.Tests.Histories;

/// <summary>One connection to the broker of a history.</summary>
internal sealed class HistoryLine(HistoryBroker broker) : IBusLine
{
    private readonly CancellationTokenSource _stopped = new();
    private readonly TaskCompletionSource<string> _end = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public string? Blocked => broker.IsBlocked ? "short of memory" : null;

    public Task StartAsync(CancellationToken cancellationToken) => broker.IsThere ? Task.CompletedTask : throw new IOException("nobody answers");

    public async Task PublishAsync(object message, Type type, Guid messageId, CancellationToken cancellationToken)
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(_stopped.Token, cancellationToken);
        await broker.TakeAsync(this, messageId, message, ended.Token);
    }

    public void Doubt(string reason)
    {
        if (Blocked is null)
        {
            Break(reason);
        }
    }

    public void Break(string reason) => _end.TrySetResult(reason);

    public Task<string> WatchAsync(CancellationToken cancellationToken) => _end.Task.WaitAsync(cancellationToken);

    public Task StopAsync(bool gracefully) => _stopped.CancelAsync();

    public void Dispose() => _stopped.Dispose();
}
