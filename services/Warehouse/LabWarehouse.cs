using System.Data.Common;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Durability;
using Polly;
using Polly.Retry;

namespace LabPipeline.Warehouse;

/// <summary>The way into the warehouse: short reads, and writes that are one transaction each.</summary>
/// <remarks>
/// Writers of one process queue here instead of in the database, so a long load delays others without time-outs.
/// A write is tried again as a whole on a fresh connection when the database says the failure may pass.
/// </remarks>
public sealed class LabWarehouse : IDisposable
{
    private const int WriteAttempts = 8;

    private readonly SemaphoreSlim _oneWriter = new(1, 1);
    private readonly ResiliencePipeline _retry;
    private readonly CancellationTokenSource _closed;

    public LabWarehouse(IWarehouseDialect dialect, TimeProvider time)
    {
        Dialect = dialect;
        _closed = new CancellationTokenSource(Timeout.InfiniteTimeSpan, time);
        _retry = new ResiliencePipelineBuilder { TimeProvider = time }
            .AddRetry(new RetryStrategyOptions
            {
                ShouldHandle = new PredicateBuilder().Handle<DbException>(dialect.IsTransient),
                MaxRetryAttempts = WriteAttempts - 1,
                BackoffType = DelayBackoffType.Exponential,
                Delay = TimeSpan.FromMilliseconds(50),
                MaxDelay = TimeSpan.FromSeconds(5),
                UseJitter = true,
            })
            .Build();
    }

    public IWarehouseDialect Dialect { get; }

    public async Task<T> ReadAsync<T>(Func<WarehouseSession, Task<T>> read, CancellationToken cancellationToken)
    {
        var connection = await Dialect.OpenAsync(cancellationToken).ConfigureAwait(false);
        await using (connection.ConfigureAwait(false))
        {
            return await read(new WarehouseSession(Dialect.Name, connection, connection, null, cancellationToken)).ConfigureAwait(false);
        }
    }

    public Task WriteAsync(Func<WarehouseSession, Task> write, CancellationToken cancellationToken) =>
        WriteAsync(
            async session =>
            {
                await write(session).ConfigureAwait(false);
                return true;
            },
            cancellationToken);

    /// <summary>Runs <paramref name="write"/> in one transaction and commits it; anything thrown leaves no trace.</summary>
    /// <exception cref="OperationCanceledException">Cancelled, or the warehouse was closed meanwhile.</exception>
    public async Task<T> WriteAsync<T>(Func<WarehouseSession, Task<T>> write, CancellationToken cancellationToken)
    {
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken, _closed.Token);
        await _oneWriter.WaitAsync(ended.Token).ConfigureAwait(false);
        try
        {
            return await _retry.ExecuteAsync(
                async token => await WriteOnceAsync(write, token).ConfigureAwait(false), ended.Token).ConfigureAwait(false);
        }
        finally
        {
            _oneWriter.Release();
        }
    }

    /// <summary>For a process that is told to stop: after <paramref name="limit"/> nothing is written any more, so that nobody waits for a writer that does not end.</summary>
    public void CloseWithin(TimeSpan limit) => _closed.CancelAfter(limit);

    /// <summary>Looks through the database for damage.</summary>
    /// <returns>What is wrong; empty when nothing is.</returns>
    public async Task<IReadOnlyList<string>> CheckAsync(CancellationToken cancellationToken)
    {
        try
        {
            return await Dialect.CheckAsync(cancellationToken).ConfigureAwait(false);
        }
        catch (DbException exception)
        {
            return [$"The database cannot be checked: {exception.Message}"];
        }
    }

    public void Dispose()
    {
        _oneWriter.Dispose();
        _closed.Dispose();
    }

    private async Task<T> WriteOnceAsync<T>(Func<WarehouseSession, Task<T>> write, CancellationToken cancellationToken)
    {
        var connection = await Dialect.OpenAsync(cancellationToken).ConfigureAwait(false);
        await using (connection.ConfigureAwait(false))
        {
            var statements = Dialect.KeepStatements(connection);
            await using var ending = statements.ConfigureAwait(false);
            var transaction = await Dialect.BeginWriteAsync(connection, cancellationToken).ConfigureAwait(false);
            await using (transaction.ConfigureAwait(false))
            {
                var result = await write(new WarehouseSession(Dialect.Name, connection, statements, transaction, cancellationToken)).ConfigureAwait(false);
                CrashPoint.Passed(DurableStep.BeforeCommit);
                await transaction.CommitAsync(CancellationToken.None).ConfigureAwait(false);
                CrashPoint.Passed(DurableStep.Committed);
                return result;
            }
        }
    }
}
