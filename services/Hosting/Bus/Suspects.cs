namespace LabPipeline.Hosting.Bus;

/// <summary>Messages that came back several times: one of them may end the process each time, and the broker counts a return of all it had in hand then.</summary>
/// <remarks>
/// They are handled one at a time, in an order drawn anew in every life of the process. So an innocent one has an even chance each time to be
/// through before the guilty one, and only that one comes back as often as the broker allows.
/// </remarks>
internal sealed class Suspects(BusPatience patience, TimeProvider time) : IDisposable
{
    /// <summary>Fewer returns come from stops and lost connections too.</summary>
    private const long FirstSuspicion = 3;

    private readonly SemaphoreSlim _one = new(1, 1);

    public async Task HandleAsync(long returns, Func<Task> handle, CancellationToken cancellationToken)
    {
        if (returns < FirstSuspicion)
        {
            await handle().ConfigureAwait(false);
            return;
        }

        await Task.Delay(patience.Suspicion * Random.Shared.NextDouble(), time, cancellationToken).ConfigureAwait(false);
        await _one.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            await handle().ConfigureAwait(false);
        }
        finally
        {
            _one.Release();
        }
    }

    public void Dispose() => _one.Dispose();
}
