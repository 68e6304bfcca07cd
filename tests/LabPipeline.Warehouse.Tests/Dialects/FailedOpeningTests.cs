using System.Data;
using Dapper;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.SqlClient;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Tests.Dialects;

/// <summary>A connection or transaction that could not be begun is given back: services try again for days.</summary>
public sealed class FailedOpeningTests
{
    private const string Nobody = "Server=127.0.0.1,1;Database=lab;User ID=lab;Password=x;Connect Timeout=5;ConnectRetryCount=0";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Sqlite_WhenTheFileIsNoDatabase_HoldsOneHandleHoweverOftenItIsOpened()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "open files are counted in /proc");
        using var folder = new ScratchFolder();
        var path = folder.File("warehouse.db");
        await File.WriteAllTextAsync(path, new string('x', 8192), Stop);
        var dialect = new SqliteDialect(path);

        for (var turn = 0; turn < 20; turn++)
        {
            await Assert.ThrowsAsync<SqliteException>(() => dialect.OpenAsync(Stop));
        }

        Assert.InRange(HandlesOn(path), 0, 1);
        SqliteConnection.ClearAllPools();
        Assert.Equal(0, HandlesOn(path));
    }

    [Fact]
    public async Task Migration_WhenAScriptFailsOnANewFile_LeavesNoTableOfTheScriptsBefore()
    {
        using var folder = new ScratchFolder();
        using var warehouse = new LabWarehouse(new SqliteDialect(folder.File("warehouse.db")), TimeProvider.System);
        await warehouse.WriteAsync(session => session.Connection.ExecuteAsync("create table reading (other text)", transaction: session.Transaction), Stop);

        await Assert.ThrowsAsync<InvalidOperationException>(() => new Migrator(warehouse, TimeProvider.System).MigrateAsync(Stop));

        Assert.Equal(["reading"], await warehouse.ReadAsync(session => session.Connection.QueryAsync<string>("select name from sqlite_schema"), Stop));
        SqliteConnection.ClearAllPools();
    }

    [Fact]
    public async Task SqlServer_WhenNobodyListens_SaysThatItMayPass()
    {
        var dialect = new SqlServerDialect(Nobody);

        var fault = await Assert.ThrowsAsync<SqlException>(() => dialect.OpenAsync(Stop));

        Assert.True(dialect.IsTransient(fault));
    }

    /// <summary>On a database that does not know the lock, so that taking it fails.</summary>
    [Fact]
    public async Task SqlServer_WhenTheWriteLockCannotBeTaken_LeavesNoTransactionOpen()
    {
        await using var connection = new SqliteConnection("Data Source=:memory:");
        await connection.OpenAsync(Stop);

        await Assert.ThrowsAsync<SqliteException>(() => new SqlServerDialect(Nobody).BeginWriteAsync(connection, Stop));

        await using var next = connection.BeginTransaction(IsolationLevel.Serializable);
        Assert.NotNull(next);
    }

    private static int HandlesOn(string path) =>
        new DirectoryInfo("/proc/self/fd").EnumerateFiles().Count(handle => handle.LinkTarget == path);
}
