using System.Globalization;
using LabPipeline.Warehouse;

namespace LabPipeline.Board.Live;

/// <summary>Says how far the warehouse has come. However many pages ask, the warehouse is asked at most twice a second, and not at all when none does.</summary>
public sealed class LivePosition(LabWarehouse warehouse, TimeProvider time) : IDisposable
{
    private static readonly SqlText Read = SqlText.Load<LivePosition>("read-live-position");

    private static readonly TimeSpan KeptFor = TimeSpan.FromMilliseconds(500);

    private readonly SemaphoreSlim _oneReader = new(1, 1);
    private Kept? _kept;

    /// <summary>A text that is another one after every change; it means nothing else.</summary>
    public async Task<string> NowAsync(CancellationToken cancellationToken)
    {
        if (Fresh() is { } early)
        {
            return early;
        }

        await _oneReader.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            if (Fresh() is { } read)
            {
                return read;
            }

            var row = await warehouse.ReadAsync(session => session.FirstOrDefaultAsync<PositionRow>(Read), cancellationToken).ConfigureAwait(false);
            var text = string.Create(CultureInfo.InvariantCulture, $"{row!.Told}-{row.Changed}-{row.Arrived}-{row.Held}-{row.Judged?.ToUnixTimeMilliseconds()}");
            _kept = new Kept(text, time.GetTimestamp());
            return text;
        }
        finally
        {
            _oneReader.Release();
        }
    }

    /// <summary>Has the warehouse asked anew the next time: somebody has just changed something here.</summary>
    public void Forget() => _kept = null;

    public void Dispose() => _oneReader.Dispose();

    private string? Fresh() => _kept is { } kept && time.GetElapsedTime(kept.At) < KeptFor ? kept.Text : null;

    private sealed record Kept(string Text, long At);
}
