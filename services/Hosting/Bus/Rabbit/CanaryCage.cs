using System.Collections.Concurrent;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>Counts canaries out and in.</summary>
internal sealed class CanaryCage
{
    private readonly ConcurrentDictionary<long, TaskCompletionSource> _out = new();
    private long _last;

    public (Canary Canary, Task Back) Release()
    {
        var canary = new Canary(Interlocked.Increment(ref _last));
        var back = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        _out[canary.Flight] = back;
        return (canary, back.Task);
    }

    public void Return(Canary canary)
    {
        if (_out.TryRemove(canary.Flight, out var back))
        {
            back.SetResult();
        }
    }
}
