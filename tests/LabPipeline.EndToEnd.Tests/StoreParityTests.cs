using LabPipeline.Testing;
using LabPipeline.Warehouse.Dialects;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>The whole pipeline over the invented season, once on each database: promise P10.</summary>
public sealed class StoreParityTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Demo_OnSqlServer_EndsRowForRowAsOnSqlite()
    {
        var connectionString = await SqlServerForTests.CreateDatabaseAsync();
        var serviceLogin = await PrepareAsync(connectionString);
        using var onSqlite = new ScratchFolder();
        using var onSqlServer = new ScratchFolder();
        await RunAsync(onSqlite.Path, []);
        await RunAsync(onSqlServer.Path, [new("Lab__Warehouse", "sqlserver"), new("Lab__SqlServer__ConnectionString", serviceLogin)]);

        var expected = await WarehouseContents.ReadAsync(onSqlite.Path);
        var found = await WarehouseContents.ReadAsync(new SqlServerDialect(connectionString));

        Assert.False(File.Exists(onSqlServer.File("warehouse.db")));
        Assert.True(expected["readings"].Count > 10_000, "The demonstration holds more than 10,000 readings.");
        foreach (var (table, rows) in expected)
        {
            Assert.Equal(rows, found[table]);
        }
    }

    /// <summary>Tables and roles as the owner makes them; the demonstration then runs under a login that may only read and write.</summary>
    private static async Task<string> PrepareAsync(string connectionString)
    {
        using var folder = new ScratchFolder();
        using var migration = ProductProcess.Start(
            "Station", [new("Lab__Warehouse", "sqlserver"), new("Lab__SqlServer__ConnectionString", connectionString)], ["migrate", "--data", folder.Path]);
        var (exitCode, _, errors) = await migration.FinishAsync(Stop);
        Assert.True(exitCode == 0, errors);
        return await SqlServerForTests.CreateLoginAsync(connectionString, "lab_writer");
    }

    private static async Task RunAsync(string folder, IEnumerable<KeyValuePair<string, string>> settings)
    {
        using var process = ProductProcess.Start("Station", settings, ["demo", "--data", folder]);
        var (exitCode, text, errors) = await process.FinishAsync(Stop);
        Assert.True(exitCode == 0, errors);
        Assert.DoesNotContain(" NO ", text, StringComparison.Ordinal);
    }
}
