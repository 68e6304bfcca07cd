using System.Collections.Concurrent;

namespace LabPipeline.Hosting.Bus;

/// <summary>The handlers at work in this process, so that it can say which one it does not wait for.</summary>
public sealed class RunningHandlers(TimeProvider time)
{
    private readonly ConcurrentDictionary<RunningHandler, bool> _running = new();

    public IReadOnlyList<RunningHandler> List() => [.. _running.Keys];

    public async Task RunAsync(string endpoint, Guid? messageId, Func<Task> handle)
    {
        var running = new RunningHandler(endpoint, messageId, time.GetUtcNow());
        _running[running] = true;
        try
        {
            await handle().ConfigureAwait(false);
        }
        finally
        {
            _running.TryRemove(running, out _);
        }
    }
}
