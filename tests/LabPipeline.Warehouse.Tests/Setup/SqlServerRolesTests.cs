using Dapper;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Schema;
using LabPipeline.Warehouse.Setup;
using LabPipeline.Warehouse.Tests.Facts;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Warehouse.Tests.Setup;

/// <summary>What each login may do, asked of the server itself: least privilege. SQLite has no logins.</summary>
public sealed class SqlServerRolesTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Service_WithTheWritersRole_StoresAFileAndStartsWithoutMigrating()
    {
        using var service = new LabWarehouse(new SqlServerDialect(await LoginAsync("lab_writer")), TimeProvider.System);

        await new Migrator(service, TimeProvider.System).MigrateAsync(Stop);
        await FactFiles.StoreAsync(service, "small", FactFiles.Reading("0", 1m));
        await FactFiles.StoreAsync(service, "by bulk copy", Enumerable.Range(1, 6000).Select(row => FactFiles.Reading($"{row}", 1m)));

        Assert.Equal(6001, await service.ReadAsync(session => session.Connection.ExecuteScalarAsync<int>("select count(*) from v_reading"), Stop));
    }

    [Theory]
    [InlineData("delete from reading")]
    [InlineData("delete from qc_alert")]
    [InlineData("delete from change_log")]
    [InlineData("drop table reading")]
    [InlineData("create table more (a int)")]
    public async Task Service_WithTheWritersRole_NeitherDeletesFactsNorChangesTables(string statement)
    {
        await using var connection = new SqlConnection(await LoginAsync("lab_writer"));

        var denial = await Assert.ThrowsAsync<SqlException>(() => connection.ExecuteAsync(statement));

        Assert.Matches("permission|owner", denial.Message);
    }

    [Fact]
    public async Task Service_WhenTheSchemaIsOlder_SaysWhoMayMigrate()
    {
        var owner = await MigratedAsync();
        await using (var connection = new SqlConnection(owner))
        {
            await connection.ExecuteAsync("delete from schema_version where number = (select max(number) from schema_version)");
        }

        using var service = new LabWarehouse(new SqlServerDialect(await SqlServerForTests.CreateLoginAsync(owner, "lab_writer")), TimeProvider.System);

        var refusal = await Assert.ThrowsAsync<InvalidOperationException>(() => new Migrator(service, TimeProvider.System).MigrateAsync(Stop));

        Assert.Contains("run 'station migrate' once with the login that owns the database", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Analyst_WithTheirRole_ReadsEveryViewAndNoTable()
    {
        await using var connection = new SqlConnection(await LoginAsync("lab_analyst"));
        var views = SchemaMeanings.Tables.Select(table => table.Name).Where(name => name.StartsWith("v_", StringComparison.Ordinal)).ToList();

        Assert.NotEmpty(views);
        foreach (var view in views)
        {
            await connection.QueryAsync($"select * from {view}");
        }

        await Assert.ThrowsAsync<SqlException>(() => connection.QueryAsync("select * from reading"));
        await Assert.ThrowsAsync<SqlException>(() => connection.ExecuteAsync("update v_reading set operator = N'somebody else'"));
    }

    private static async Task<string> LoginAsync(string role) => await SqlServerForTests.CreateLoginAsync(await MigratedAsync(), role);

    private static async Task<string> MigratedAsync()
    {
        var owner = await SqlServerForTests.CreateDatabaseAsync();
        using var warehouse = new LabWarehouse(new SqlServerDialect(owner), TimeProvider.System);
        await new Migrator(warehouse, TimeProvider.System).MigrateAsync(Stop);
        await SqlServerRoles.GrantAsync(warehouse, Stop);
        return owner;
    }
}
