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
        using var onSqlite = new ScratchFolder();
        using var onSqlServer = new ScratchFolder();
        await RunAsync(onSqlite.Path, []);
        await RunAsync(onSqlServer.Path, [new("Lab__Warehouse", "sqlserver"), new("Lab__SqlServer__ConnectionString", connectionString)]);

        var expected = await WarehouseContents.ReadAsync(onSqlite.Path);
        var found = await WarehouseContents.ReadAsync(new SqlServerDialect(connectionString));

        Assert.False(File.Exists(onSqlServer.File("warehouse.db")));
        Assert.True(expected["readings"].Count > 10_000, "The demonstration holds more than 10,000 readings.");
        foreach (var (table, rows) in expected)
        {
            Assert.Equal(rows, found[table]);
        }
    }

    private static async Task RunAsync(string folder, IEnumerable<KeyValuePair<string, string>> settings)
    {
        using var process = ProductProcess.Start("Station", settings, ["demo", "--data", folder]);
        var (exitCode, text, errors) = await process.FinishAsync(Stop);
        Assert.True(exitCode == 0, errors);
        Assert.DoesNotContain(" NO ", text, StringComparison.Ordinal);
    }
}
