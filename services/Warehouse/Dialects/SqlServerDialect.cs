using System.Data;
using System.Data.Common;
using Dapper;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>SQL Server, one writing transaction at a time as in SQLite.</summary>
/// <remarks>
/// Stores read, decide and write. That is safe when no other process writes in between: SQLite grants it, and here an application lock does,
/// held to the end of the transaction. READ COMMITTED is enough inside it. Unique keys stand behind it against writers that do not
/// take the lock; a violation makes the whole transaction run again, which then finds what the other one wrote.
/// </remarks>
public sealed class SqlServerDialect : IWarehouseDialect
{
    /// <summary>Name of the application lock that writers hold.</summary>
    public const string WriteLock = "LabPipeline write";

    // On top of the wait for the lock itself.
    private const int LockAnswerSeconds = 15;

    private const string TakeWriteLock =
        """
        set xact_abort on;
        declare @granted int;
        exec @granted = sp_getapplock @Resource = @name, @LockMode = N'Exclusive', @LockOwner = N'Transaction', @LockTimeout = @milliseconds;
        select @granted;
        """;

    private readonly string _connectionString;
    private readonly int _patienceSeconds;

    /// <param name="connectionString">With the database's name; transport encryption is on unless it says otherwise.</param>
    public SqlServerDialect(string connectionString)
    {
        DapperTypes.Register();
        var builder = new SqlConnectionStringBuilder(connectionString) { MultipleActiveResultSets = false };
        if (!builder.ShouldSerialize("Application Name"))
        {
            builder.ApplicationName = "LabPipeline";
        }

        _patienceSeconds = builder.CommandTimeout;
        _connectionString = builder.ToString();
    }

    public DialectName Name => DialectName.SqlServer;

    public async Task<DbConnection> OpenAsync(CancellationToken cancellationToken)
    {
        // One that does not open holds nothing that would have to be given back.
        var connection = new SqlConnection(_connectionString);
        await connection.OpenAsync(cancellationToken).ConfigureAwait(false);
        return connection;
    }

    public async Task<DbTransaction> BeginWriteAsync(DbConnection connection, CancellationToken cancellationToken)
    {
        var transaction = await connection.BeginTransactionAsync(IsolationLevel.ReadCommitted, cancellationToken).ConfigureAwait(false);
        try
        {
            var granted = await connection.ExecuteScalarAsync<int>(new CommandDefinition(
                TakeWriteLock,
                new { name = WriteLock, milliseconds = _patienceSeconds * 1000 },
                transaction,
                _patienceSeconds + LockAnswerSeconds,
                cancellationToken: cancellationToken)).ConfigureAwait(false);
            return granted >= 0 ? transaction : throw new WriteLockException(granted, _patienceSeconds);
        }
        catch
        {
            await transaction.DisposeAsync().ConfigureAwait(false);
            throw;
        }
    }

    // The write lock already excludes every other process.
    public Task LockForMigrationAsync(WarehouseSession session, CancellationToken cancellationToken) => Task.CompletedTask;

    public Task DescribeAsync(WarehouseSession session) => SqlServerDescriptions.WriteAsync(session, SchemaMeanings.Tables);

    public IReadOnlyList<string> Batches(string script) => SqlServerBatches.Of(script);

    public bool IsTransient(DbException exception) => exception switch
    {
        WriteLockException => true,
        SqlException failure => SqlServerFailure.MayPass(failure),
        _ => false,
    };

    // A database's administrator checks and backs up by the server's own jobs (docs/specs/sql-server.md).
    public Task<IReadOnlyList<string>> CheckAsync(CancellationToken cancellationToken) => Task.FromResult<IReadOnlyList<string>>([]);

    public Task<bool> BackUpAsync(string path, CancellationToken cancellationToken) => Task.FromResult(false);

    public DbConnection KeepStatements(DbConnection connection) => connection;

    public IFactLoader CreateFactLoader(WarehouseSession session) => new SqlServerFactLoader(session);
}
