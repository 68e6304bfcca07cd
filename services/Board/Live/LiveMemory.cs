using System.Collections.Concurrent;
using LabPipeline.Warehouse;

namespace LabPipeline.Board.Live;

/// <summary>What many pages ask alike, read once for each position of the warehouse: however many people look, a change costs each question one answer.</summary>
/// <remarks>An answer is as old as the position it was read at, half a second at most; whoever has just done something gets a new one.</remarks>
public sealed class LiveMemory(LabWarehouse warehouse, LivePosition position)
{
    private volatile Answers _answers = new("");

    /// <param name="key">The question, with everything it depends on.</param>
    /// <param name="read">How it is answered; may outlive the request that asked first.</param>
    /// <param name="cancellationToken">Gives up waiting.</param>
    public async Task<T> AskAsync<T>(string key, Func<WarehouseSession, Task<T>> read, CancellationToken cancellationToken)
        where T : class
    {
        // The position is taken before the answer is read: what is kept under it may be newer and is never older.
        var now = await position.NowAsync(cancellationToken);
        var answers = _answers;
        if (answers.Position != now)
        {
            _answers = answers = new Answers(now);
        }

        var answer = answers.ByKey.GetOrAdd(key, _ => new Lazy<Task<object>>(async () => await warehouse.ReadAsync(read, CancellationToken.None)));
        try
        {
            return (T)await answer.Value.WaitAsync(cancellationToken);
        }
        catch (Exception) when (answer.Value.IsFaulted)
        {
            // The next one to ask shall try again.
            answers.ByKey.TryRemove(key, out _);
            throw;
        }
    }

    private sealed record Answers(string Position)
    {
        public ConcurrentDictionary<string, Lazy<Task<object>>> ByKey { get; } = new(StringComparer.Ordinal);
    }
}
