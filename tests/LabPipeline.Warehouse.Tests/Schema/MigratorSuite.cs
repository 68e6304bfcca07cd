using Dapper;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Schema;

namespace LabPipeline.Warehouse.Tests.Schema;

/// <summary>The schema only moves forward, once, and never silently.</summary>
public abstract class MigratorSuite(DialectName store)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Migrate_WhenRunTwice_AppliesEachScriptOnce()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        await new Migrator(scratch.Warehouse, scratch.Time).MigrateAsync(Stop);

        var applied = await scratch.Warehouse.ReadAsync(
            async session => (await session.Connection.QueryAsync<string>("select name from schema_version order by number")).ToList(), Stop);
        Assert.Equal(Migrator.ScriptsOf(store).Select(script => script.Name), applied);
    }

    [Fact]
    public async Task Migrate_WhenAnAppliedScriptWasEdited_RefusesToStart()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await ChangeAsync(scratch, "update schema_version set checksum = 'x' where number = 2");

        var refusal = await Assert.ThrowsAsync<InvalidOperationException>(() => new Migrator(scratch.Warehouse, scratch.Time).MigrateAsync(Stop));

        Assert.Contains("0002-facts", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(79)]
    public async Task Migrate_WhenTheWarehouseIsNewer_RefusesToStart()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await ChangeAsync(scratch, "insert into schema_version (number, name, checksum, applied_at) values (9999, '9999-later', 'x', '2030-01-01T00:00:00.000Z')");

        var refusal = await Assert.ThrowsAsync<InvalidOperationException>(() => new Migrator(scratch.Warehouse, scratch.Time).MigrateAsync(Stop));

        Assert.Contains("newer program", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Migrate_WhenAScriptCannotBeApplied_NamesItAndLeavesNothingOfIt()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        // Its tables are there already, so the second script fails at its first statement.
        await ChangeAsync(scratch, "delete from schema_version where number = 2");

        var refusal = await Assert.ThrowsAsync<InvalidOperationException>(() => new Migrator(scratch.Warehouse, scratch.Time).MigrateAsync(Stop));

        Assert.Contains("Schema script 0002-facts could not be applied", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("station migrate", refusal.Message, StringComparison.Ordinal);
        Assert.False(await new Migrator(scratch.Warehouse, scratch.Time).IsNewestAsync(Stop));
    }

    private static Task<int> ChangeAsync(ScratchWarehouse scratch, string sql) => scratch.Warehouse.WriteAsync(
        session => session.Connection.ExecuteAsync(sql, transaction: session.Transaction), Stop);
}
