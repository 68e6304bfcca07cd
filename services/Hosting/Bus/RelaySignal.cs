namespace LabPipeline.Hosting.Bus;

/// <summary>Wakes the relay when something was committed to the outbox; without it the relay looks on its timer.</summary>
public sealed class RelaySignal : IDisposable
{
    private readonly SemaphoreSlim _signal = new(0, 1);

    public void Wake()
    {
        lock (_signal)
        {
            if (_signal.CurrentCount == 0)
            {
                _signal.Release();
            }
        }
    }

    public Task<bool> WaitAsync(TimeSpan atMost, CancellationToken cancellationToken) => _signal.WaitAsync(atMost, cancellationToken);

    public void Dispose() => _signal.Dispose();
}
