using System.Globalization;
using Dapper;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Intake.Tests.Storing;

/// <summary>The database and its disk fail; no file is lost, none counts twice, and intake goes on by itself.</summary>
public sealed class WarehouseTroubleTests
{
    private const string One = "S26P01T03R2C";
    private const int Files = 60;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(27)]
    public async Task Files_WhenTheDiskRunsFull_AreAllStoredOnceAfterThereIsRoom()
    {
        using var volume = new SmallVolume(megabytes: 3);
        await using var bench = await IntakeBench.CreateInAsync(volume.Path);
        var full = 0;
        for (var file = 0; file < Files;)
        {
            try
            {
                await bench.DropAsync(Name(file), Rows(file));
                file++;
                await bench.LookAsync();
            }
            catch (Exception exception) when (exception is IOException or SqliteException)
            {
                full++;
                Assert.Equal(0, await BrokenFilesAsync(bench));
                // A megabyte at a time, so that it runs full more than once: all files need about five.
                volume.Resize(3 + full);
                bench.Restart();
            }
        }

        volume.Resize(64);
        bench.Restart();
        await bench.LookAsync();

        Assert.True(full >= 2, $"The disk was full {full} times.");
        Assert.Equal(Files * 100, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.Equal(0, await BrokenFilesAsync(bench));
        Assert.Empty(Directory.EnumerateFiles(bench.Drop));
        Assert.Empty(await bench.Warehouse.CheckAsync(Stop));
    }

    [Fact]
    public async Task Originals_WhenTheNextBatchCannotBeStored_HaveMovedAndAreNotedByTheNextLook()
    {
        await using var bench = await IntakeBench.CreateAsync();
        for (var file = 0; file < Files; file++)
        {
            await bench.DropAsync(Name(file), Rows(file));
        }

        await RunAsync(bench, $"create trigger no_more before insert on source_file when new.name = '{Name(Files - 1)}' begin select raise(abort, 'no more'); end");
        await Assert.ThrowsAsync<SqliteException>(bench.LookAsync);
        var moved = Directory.GetFiles(Path.Combine(bench.Drop, "taken")).Length;
        var unnoted = await bench.OneAsync<int>("select count(*) from arrival where put_away = 0");
        await RunAsync(bench, "drop trigger no_more");
        await bench.LookAsync();

        Assert.InRange(moved, 1, Files - 1);
        Assert.Equal(moved, unnoted);
        Assert.Equal((Files, Files * 100), (await bench.OneAsync<int>("select count(*) from arrival where put_away = 1 and again = 0"), await bench.OneAsync<int>("select count(*) from reading")));
        Assert.Empty(Directory.EnumerateFiles(bench.Drop));
    }

    [Fact]
    [Shows(47, 52)]
    public async Task Files_WhenAnotherProgramHoldsTheWriteLock_WaitForItAndAreStored()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await using var other = new SqliteConnection($"Data Source={bench.WarehouseFile};Pooling=false");
        await other.OpenAsync(Stop);
        await using var held = other.BeginTransaction(deferred: false);

        var look = bench.LookAsync();
        await Task.Delay(TimeSpan.FromSeconds(1.5), Stop);
        Assert.False(look.IsCompleted);
        await held.RollbackAsync(Stop);
        await look;

        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    [Shows(28)]
    public async Task Files_WhenTwoStationsWatchOneFolder_AreTakenByOneOfThemOnce()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.LookAsync();
        await bench.HoldByAsync("other-machine/1/20260101T000000");
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        bench.Restart();

        await bench.LookAsync();
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from arrival"));

        // The other machine died: nobody can tell, so its lease has to run out.
        bench.Time.Advance(TimeSpan.FromSeconds(31));
        await bench.LookAsync();
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from arrival"));
    }

    [Fact]
    [Shows(50, 55)]
    public async Task Log_WhenAReaderStaysOpenUnderLoad_IsCutBackOnceItEnds()
    {
        const int Megabyte = 1024 * 1024;
        await using var bench = await IntakeBench.CreateAsync();
        await WriteAsync(bench, "create table load (bytes blob)");
        await using (var reader = new SqliteConnection($"Data Source={bench.WarehouseFile};Pooling=false"))
        {
            await reader.OpenAsync(Stop);
            await using var reading = reader.BeginTransaction(deferred: true);
            await reader.ExecuteScalarAsync<int>("select count(*) from arrival", transaction: reading);
            for (var part = 0; part < 10; part++)
            {
                await WriteAsync(bench, "insert into load values (zeroblob(8388608))");
            }

            Assert.True(LogBytes() > 70 * Megabyte, "The reader keeps the log from being used again.");
        }

        for (var part = 0; part < 3; part++)
        {
            await WriteAsync(bench, "insert into load values (zeroblob(1))");
        }

        Assert.InRange(LogBytes(), 0, 64 * Megabyte);

        long LogBytes() => new FileInfo(bench.WarehouseFile + "-wal").Length;
    }

    [Fact]
    [Shows(51)]
    public async Task Warehouse_WhenFourProcessesStartOnANewOne_IsMigratedOnce()
    {
        using var folder = new ScratchFolder();
        var starts = Enumerable.Range(0, 4).Select(_ => Task.Run(
            async () =>
            {
                using var warehouse = new LabWarehouse(new SqliteDialect(folder.File("warehouse.db")), TimeProvider.System);
                await new Migrator(warehouse, TimeProvider.System).MigrateAsync(Stop);
            },
            Stop));

        await Task.WhenAll(starts);

        using var one = new LabWarehouse(new SqliteDialect(folder.File("warehouse.db")), TimeProvider.System);
        Assert.True(await new Migrator(one, TimeProvider.System).IsNewestAsync(Stop));
        SqliteConnection.ClearAllPools();
    }

    private static Task<int> WriteAsync(IntakeBench bench, string sql) =>
        bench.Warehouse.WriteAsync(session => session.Connection.ExecuteAsync(sql, transaction: session.Transaction), Stop);

    private static Task<int> RunAsync(IntakeBench bench, string sql) =>
        bench.Warehouse.WriteAsync(session => session.Connection.ExecuteAsync(sql, transaction: session.Transaction), Stop);

    private static string Name(int file) => string.Create(CultureInfo.InvariantCulture, $"run{file}.csv");

    private static string Rows(int file) => SugarProfile.Rows([.. Enumerable.Range(file * 100, 100).Select(row => (One, row, "0.052"))]);

    /// <summary>Files that are in the ledger with other rows than they have.</summary>
    private static Task<int> BrokenFilesAsync(IntakeBench bench) => bench.OneAsync<int>(
        "select count(*) from source_file f where f.new_count <> (select count(*) from reading r where r.file_id = f.file_id)");
}
