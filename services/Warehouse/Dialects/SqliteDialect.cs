using System.Data.Common;
using Dapper;
using LabPipeline.Warehouse.Facts;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>SQLite in write-ahead mode, synchronous FULL: what is acknowledged survives loss of power.</summary>
public sealed class SqliteDialect : IWarehouseDialect
{
    private const int SqliteBusy = 5;
    private const int SqliteLocked = 6;

    private static readonly Version OldestSafe = new(3, 51, 3);

    private readonly string _connectionString;

    /// <param name="path">The warehouse file; its folder must exist.</param>
    public SqliteDialect(string path)
    {
        DapperTypes.Register();
        Path = path;
        _connectionString = new SqliteConnectionStringBuilder
        {
            DataSource = path,
            ForeignKeys = true,
            DefaultTimeout = 30,
            Pooling = true,
        }.ToString();
    }

    public string Path { get; }

    public DialectName Name => DialectName.Sqlite;

    public async Task<DbConnection> OpenAsync(CancellationToken cancellationToken)
    {
        var connection = new SqliteConnection(_connectionString);
        try
        {
            await connection.OpenAsync(cancellationToken).ConfigureAwait(false);
            AssertSafe(connection.ServerVersion);
            await connection.ExecuteAsync(
                "pragma journal_mode = wal; pragma synchronous = full; pragma cache_size = -2048; pragma journal_size_limit = 67108864;")
                .ConfigureAwait(false);
            return connection;
        }
        catch
        {
            await connection.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    public Task<DbTransaction> BeginWriteAsync(DbConnection connection, CancellationToken cancellationToken) =>
        Task.FromResult<DbTransaction>(((SqliteConnection)connection).BeginTransaction(deferred: false));

    // The write transaction already excludes every other process.
    public Task LockForMigrationAsync(WarehouseSession session, CancellationToken cancellationToken) => Task.CompletedTask;

    public Task DescribeAsync(WarehouseSession session) => Task.CompletedTask;

    public IReadOnlyList<string> Batches(string script) => [script];

    public bool IsTransient(DbException exception) =>
        exception is SqliteException { SqliteErrorCode: SqliteBusy or SqliteLocked };

    public async Task<IReadOnlyList<string>> CheckAsync(CancellationToken cancellationToken)
    {
        var connection = await OpenAsync(cancellationToken).ConfigureAwait(false);
        await using (connection.ConfigureAwait(false))
        {
            return await SqliteCheck.RunAsync(connection).ConfigureAwait(false);
        }
    }

    public async Task<bool> BackUpAsync(string path, CancellationToken cancellationToken)
    {
        var connection = (SqliteConnection)await OpenAsync(cancellationToken).ConfigureAwait(false);
        await using (connection.ConfigureAwait(false))
        {
            await SqliteCheck.CopyAsync(connection, path).ConfigureAwait(false);
            return true;
        }
    }

    public DbConnection KeepStatements(DbConnection connection) => new SqliteStatements((SqliteConnection)connection);

    public IFactLoader CreateFactLoader(WarehouseSession session) => new SqliteFactLoader(session);

    /// <summary>Several processes may write one file, and SQLite before 3.51.3 can damage such a file (its "WAL-reset" fault).</summary>
    /// <exception cref="InvalidOperationException">The library is too old.</exception>
    public static void AssertSafe(string libraryVersion)
    {
        if (Version.Parse(libraryVersion) < OldestSafe)
        {
            throw new InvalidOperationException(
                $"SQLite {libraryVersion} can damage a warehouse that several processes write; {OldestSafe} or newer is needed.");
        }
    }
}
