using System.Data.Common;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Testing;

/// <summary>A database that a test can take away and give back: while it is away nothing can be opened.</summary>
public sealed class OutageDialect(IWarehouseDialect real) : IWarehouseDialect
{
    private volatile bool _isAway;

    public bool IsAway
    {
        get => _isAway;
        set => _isAway = value;
    }

    public DialectName Name => real.Name;

    public Task<DbConnection> OpenAsync(CancellationToken cancellationToken) =>
        IsAway ? Task.FromException<DbConnection>(new OutageException()) : real.OpenAsync(cancellationToken);

    public Task<DbTransaction> BeginWriteAsync(DbConnection connection, CancellationToken cancellationToken) => real.BeginWriteAsync(connection, cancellationToken);

    public Task LockForMigrationAsync(WarehouseSession session, CancellationToken cancellationToken) => real.LockForMigrationAsync(session, cancellationToken);

    public Task DescribeAsync(WarehouseSession session) => real.DescribeAsync(session);

    public IReadOnlyList<string> Batches(string script) => real.Batches(script);

    public bool IsTransient(DbException exception) => real.IsTransient(exception);

    public Task<IReadOnlyList<string>> CheckAsync(CancellationToken cancellationToken) => real.CheckAsync(cancellationToken);

    public Task<bool> BackUpAsync(string path, CancellationToken cancellationToken) => real.BackUpAsync(path, cancellationToken);

    public DbConnection KeepStatements(DbConnection connection) => real.KeepStatements(connection);

    public IFactLoader CreateFactLoader(WarehouseSession session) => real.CreateFactLoader(session);
}
