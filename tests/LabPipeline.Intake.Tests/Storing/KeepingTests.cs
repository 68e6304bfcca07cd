using Dapper;
using LabPipeline.Intake.Keeping;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace LabPipeline.Intake.Tests.Storing;

/// <summary>The warehouse can be rebuilt from the archive, equal, and an audit tells when that is needed: promise P8.</summary>
public sealed class KeepingTests
{
    private const string One = "S26P01T03R2C";
    private const string Two = "S26P01T03R3A";

    // Everything but identifiers and when rows were made.
    private const string Facts =
        """
        select f.sha256 || ' ' || f.name || ' ' || f.state || ' ' || f.taken_at || ' ' || coalesce(f.reason, '') || ' ' || f.new_count || ' ' || f.repeated_count || ' '
            || f.conflicting_count || ' ' || coalesce((select group_concat(r.line || ':' || r.row_key || ':' || r.value || ':' || r.raw_value || ':' || r.standing)
            from (select * from reading where file_id = f.file_id order by line, quantity_id) r), '')
        from source_file f order by f.sha256
        """;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Audit_WhenAllIsWell_ComparesEveryStoredFileAndFindsNothing()
    {
        await using var bench = await FilledAsync();

        var report = await AuditAsync(bench);

        Assert.Empty(report.Faults);
        Assert.Equal((4, 3), (report.Files, report.Compared));
    }

    [Theory]
    [Shows(58)]
    [InlineData("update reading set value = 0.53 where line = 2 and file_id = 1", "stored 0.53 from line 2")]
    [InlineData("update reading set raw_value = '0.0520' where line = 2 and file_id = 1", "'0.0520'")]
    [InlineData("update reading set quantity_id = 2 where line = 2 and file_id = 1", "the archived file does not say")]
    [InlineData("delete from reading where standing = 1", "0 facts are stored, 1 were")]
    public async Task Audit_WhenAStoredFactIsNotWhatItsLineSays_NamesFileAndLine(string damage, string expected)
    {
        await using var bench = await FilledAsync();
        await bench.QueryAsync<int>(damage + "; select 1");

        var report = await AuditAsync(bench);

        Assert.Contains(expected, Assert.Single(report.Faults), StringComparison.Ordinal);
    }

    [Fact]
    [Shows(58, 77)]
    public async Task Audit_WhenACopyInTheArchiveIsChangedOrGone_NamesTheFile()
    {
        await using var bench = await FilledAsync();
        var copies = await bench.QueryAsync<string>("select archived_as from source_file order by name");
        await File.AppendAllTextAsync(Path.Combine(bench.Archive, copies[0]), " ", Stop);
        File.Delete(Path.Combine(bench.Archive, copies[1]));

        var report = await AuditAsync(bench);

        Assert.Equal(2, report.Faults.Count);
        Assert.Contains("has changed", report.Faults[0], StringComparison.Ordinal);
    }

    [Fact]
    [Shows(58)]
    public async Task Warehouse_WhenAPageIsDamaged_IsFoundByTheAuditAndRebuiltEqual()
    {
        await using var bench = await FilledAsync();
        var expected = await bench.QueryAsync<string>(Facts);
        await bench.QueryAsync<string>("pragma wal_checkpoint(truncate)");
        SqliteConnection.ClearAllPools();
        await DamageAsync(bench.WarehouseFile);

        var report = await AuditAsync(bench);
        Assert.NotEmpty(report.Faults);
        Assert.Contains("malformed", string.Join(' ', report.Faults), StringComparison.Ordinal);

        using var folder = new ScratchFolder();
        using var rebuilt = await EmptyAsync(folder.File("warehouse.db"));
        var replayed = await new ArchiveReplay(rebuilt, bench.Archive, bench.Time).RunAsync(Stop);

        Assert.Equal((5, 5), replayed);
        Assert.Equal(expected, await QueryAsync(rebuilt, Facts));
    }

    [Fact]
    [Shows(57, 82)]
    public async Task Backup_WhenRestoredLaterAndReplayed_IsAsTheWarehouseBeforeItWasLost()
    {
        await using var bench = await FilledAsync();
        using var folder = new ScratchFolder();
        var shelf = new BackupShelf(folder.Path);
        await shelf.AddAsync(bench.Warehouse, bench.Time.GetUtcNow(), Stop);
        await bench.DropAsync("later.csv", SugarProfile.Rows((Two, 9, "0.070")));
        await bench.LookAsync();
        var expected = await bench.QueryAsync<string>(Facts);

        using var restored = await EmptyAsync(shelf.Newest()!);
        var replayed = await new ArchiveReplay(restored, bench.Archive, bench.Time).RunAsync(Stop);

        Assert.Equal((1, 6), replayed);
        Assert.Equal(expected, await QueryAsync(restored, Facts));
        Assert.Equal((0, 6), await new ArchiveReplay(restored, bench.Archive, bench.Time).RunAsync(Stop));
    }

    [Fact]
    [Shows(57)]
    public async Task Backup_WhenFilesAreStoredAtTheSameTime_IsSoundAndHoldsWholeFiles()
    {
        await using var bench = await IntakeBench.CreateAsync();
        using var folder = new ScratchFolder();
        var shelf = new BackupShelf(folder.Path);
        var loading = Task.Run(async () =>
        {
            for (var file = 0; file < 40; file++)
            {
                await bench.DropAsync($"run{file}.csv", SugarProfile.Rows([.. Enumerable.Range(file * 200, 200).Select(row => (One, row, "0.052"))]));
                await bench.LookAsync();
            }
        }, Stop);
        for (var backup = 0; !loading.IsCompleted || backup == 0; backup++)
        {
            var copy = await shelf.AddAsync(bench.Warehouse, DateTimeOffset.UtcNow, Stop);
            using var restored = await EmptyAsync(copy!);
            Assert.Empty(await restored.CheckAsync(Stop));
            Assert.Empty(await QueryAsync(restored, "select f.name from source_file f where f.new_count <> (select count(*) from reading r where r.file_id = f.file_id)"));
        }

        await loading;
        Assert.True(Directory.GetFiles(folder.Path, "*.db").Length <= 7);
    }

    [Fact]
    [Shows(58)]
    public async Task Keeper_WhenADayHasPassed_BacksUpAndAuditsOnceAndNotesIt()
    {
        await using var bench = await FilledAsync();
        using var keeper = new WarehouseKeeper(bench.Warehouse, Options.Create(bench.Lab), bench.Time, NullLogger<WarehouseKeeper>.Instance);

        Assert.Null(await keeper.LookAsync(Stop));
        bench.Time.Advance(TimeSpan.FromHours(2));
        Assert.True((await keeper.LookAsync(Stop))!.IsClean);
        bench.Time.Advance(TimeSpan.FromHours(23));
        Assert.Null(await keeper.LookAsync(Stop));
        bench.Time.Advance(TimeSpan.FromHours(1));
        Assert.NotNull(await keeper.LookAsync(Stop));

        Assert.Equal(2, Directory.GetFiles(bench.Lab.BackupFolder, "*.db").Length);
        Assert.Equal("4 files, 3 compared line by line, no fault", (await bench.QueryAsync<string>("select why from change_log where subject = 'warehouse'"))[0]);
    }

    /// <summary>A stored file, one that repeats and contests, the first one again, a refused one and one with a twin name.</summary>
    private static async Task<IntakeBench> FilledAsync()
    {
        var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("a.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0.061")));
        await bench.DropAsync("b.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0.099")));
        await bench.LookAsync();
        bench.Time.Advance(TimeSpan.FromMinutes(1));
        await bench.DropAsync("c.csv", SugarProfile.Rows((One, 1, "n/a")));
        await bench.DropAsync("d.csv", SugarProfile.Rows((One, 1, "0.052"), (Two, 2, "0.061")));
        await bench.DropAsync("e.csv", SugarProfile.Rows((One, 3, "0.040")));
        await bench.LookAsync();
        return bench;
    }

    private static Task<AuditReport> AuditAsync(IntakeBench bench) => new ArchiveAudit(bench.Warehouse, bench.Archive).RunAsync(Stop);

    /// <summary>Flips bytes in the cells of the page that holds readings.</summary>
    private static async Task DamageAsync(string path)
    {
        await using var connection = new SqliteConnection($"Data Source={path};Mode=ReadOnly;Pooling=false");
        await connection.OpenAsync(Stop);
        var page = await connection.ExecuteScalarAsync<int>("select rootpage from sqlite_schema where name = 'reading'");
        var size = await connection.ExecuteScalarAsync<int>("pragma page_size");
        await connection.CloseAsync();
        await using var file = new FileStream(path, FileMode.Open, FileAccess.ReadWrite);
        file.Seek(((long)page - 1) * size, SeekOrigin.Begin);
        file.Write([0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF]);
    }

    private static async Task<LabWarehouse> EmptyAsync(string path)
    {
        var warehouse = new LabWarehouse(new SqliteDialect(path), TimeProvider.System);
        await new Migrator(warehouse, TimeProvider.System).MigrateAsync(Stop);
        return warehouse;
    }

    private static Task<List<string>> QueryAsync(LabWarehouse warehouse, string sql) =>
        warehouse.ReadAsync(async session => (await session.Connection.QueryAsync<string>(sql)).AsList(), Stop);
}
