using System.Data.Common;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>What differs between the databases; everything else is common SQL or a pair of statement files.</summary>
public interface IWarehouseDialect
{
    DialectName Name { get; }

    /// <summary>Opens a connection with the durability settings the promises rest on.</summary>
    Task<DbConnection> OpenAsync(CancellationToken cancellationToken);

    /// <summary>Begins a transaction that may write, taking the write lock at once where the database has one.</summary>
    Task<DbTransaction> BeginWriteAsync(DbConnection connection, CancellationToken cancellationToken);

    /// <summary>A connection over this one that keeps the statements of a transaction prepared; the same one where the database does that.</summary>
    DbConnection KeepStatements(DbConnection connection);

    /// <summary>Takes the lock under which only one process migrates; it is released when the transaction ends.</summary>
    Task LockForMigrationAsync(WarehouseSession session, CancellationToken cancellationToken);

    /// <summary>Writes what tables and columns mean into the database, where it has a place for that; called after a migration.</summary>
    Task DescribeAsync(WarehouseSession session);

    /// <summary>Splits a migration script into the batches the database takes one by one.</summary>
    IReadOnlyList<string> Batches(string script);

    /// <summary>Whether the whole transaction may succeed when tried again: locked, deadlocked, timed out.</summary>
    bool IsTransient(DbException exception);

    /// <summary>Looks through the whole database for damage, where that is the program's task and not the administrator's.</summary>
    /// <returns>What is wrong; empty when nothing is.</returns>
    Task<IReadOnlyList<string>> CheckAsync(CancellationToken cancellationToken);

    /// <summary>Writes a sound copy of the database beside the running services.</summary>
    /// <returns>False where the database's own tools do that.</returns>
    Task<bool> BackUpAsync(string path, CancellationToken cancellationToken);

    /// <summary>A loader for the facts of files inside <paramref name="session"/>'s transaction.</summary>
    IFactLoader CreateFactLoader(WarehouseSession session);
}
