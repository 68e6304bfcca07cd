using LabPipeline.Hosting.Bus;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Keeping;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;
using LabPipeline.Intake.Tests.Archive;
using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using Microsoft.Extensions.Options;

namespace LabPipeline.Intake.Tests.Storing;

/// <summary>A step fails and the process goes on: what was interrupted is done later, once.</summary>
public sealed class InterruptedIntakeTests
{
    private const string One = "S26P01T03R2C";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Files_WhenTheArchiveCannotFlushThem_AreHeldAndLeaveNothing()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.DropAsync("run2.csv", SugarProfile.Rows((One, 2, "0.060")));
        var folder = new DropFolder("sugar", bench.Drop);
        var profile = ProfileDocument.Parse(SugarProfile.RenamedIn, "profile.json").Profile!;

        var result = await new FileIntake(bench.Warehouse, new FileArchive(bench.Archive, new FullDisk()), bench.Time)
            .TakeAsync(folder, [[.. FolderScan.List(folder).Select(file => new ReadyFile(file, profile))]], _ => Task.CompletedTask, Stop)
            .SingleAsync(Stop);

        Assert.Empty(result.Taken);
        Assert.Equal(["run1.csv", "run2.csv"], result.Unreadable.Select(held => held.File.Name));
        Assert.All(result.Unreadable, held => Assert.Contains("make room on the disk", held.Reason, StringComparison.Ordinal));
        Assert.Empty(Directory.EnumerateFiles(bench.Archive, "*", SearchOption.AllDirectories));
        Assert.Equal(0, await bench.OneAsync<int>("select count(*) from source_file"));

        await bench.LookAsync();
        Assert.Equal(2, await bench.OneAsync<int>("select count(*) from reading"));
    }

    [Fact]
    public async Task File_WhenItCannotBePutAway_StaysAndIsMovedByALaterLookAsTheSameArrival()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "n/a")));
        var inTheWay = Path.Combine(bench.Drop, "refused", "run1.csv.reason.txt");
        Directory.CreateDirectory(inTheWay);

        await bench.LookAsync();
        Assert.True(File.Exists(Path.Combine(bench.Drop, "run1.csv")));
        Assert.Equal(0, await bench.OneAsync<int>("select put_away from arrival"));

        Directory.Delete(inTheWay);
        await bench.LookAsync();

        Assert.Equal(1, await bench.OneAsync<int>("select put_away from arrival"));
        Assert.Empty(Directory.EnumerateFiles(bench.Drop));
        Assert.True(File.Exists(inTheWay));
        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from source_file"));
    }

    [Fact]
    public async Task File_WhenAFolderHasItsNameWhereItIsPutAway_GetsTheNextFreeOne()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        Directory.CreateDirectory(Path.Combine(bench.Drop, "taken", "run1.csv"));

        await bench.LookAsync();

        Assert.Equal("run1.2.csv", Path.GetFileName(Assert.Single(Directory.EnumerateFiles(Path.Combine(bench.Drop, "taken")))));
    }

    [Fact]
    public async Task Worker_WhenTheDatabaseIsAwayForAWhile_TakesWhatCameMeanwhile()
    {
        await using var bench = await IntakeBench.CreateAsync();
        var database = new OutageDialect(bench.Warehouse.Dialect);
        using var warehouse = new LabWarehouse(database, TimeProvider.System);
        using var relay = new RelaySignal();
        var log = new LogBook<IntakeWorker>();
        using var worker = new IntakeWorker(
            new IntakeKind(QuantityKind.Sugar, "sugar"), warehouse, relay, bench.Time, Options.Create(bench.Lab),
            Options.Create(new IntakeOptions { ScanInterval = TimeSpan.FromMilliseconds(100) }), log);
        await worker.StartAsync(Stop);
        database.IsAway = true;
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await log.WaitForAsync("FolderLookFailed sugar");

        database.IsAway = false;
        await Wait.UntilAsync(async () => await bench.OneAsync<int>("select count(*) from arrival where put_away = 1") == 1);

        Assert.Equal(1, await bench.OneAsync<int>("select count(*) from reading"));
        await worker.StopAsync(Stop);
    }

    [Fact]
    public async Task Files_WhenStoringFailsWhileTheNextAreCopied_AreEachStoredOnceByALaterLook()
    {
        await using var bench = await IntakeBench.CreateAsync();
        var database = new OutageDialect(bench.Warehouse.Dialect);
        using var warehouse = new LabWarehouse(database, TimeProvider.System);
        var folder = new DropFolder("sugar", bench.Drop);
        var profile = ProfileDocument.Parse(SugarProfile.RenamedIn, "profile.json").Profile!;
        foreach (var number in Enumerable.Range(1, 4))
        {
            await bench.DropAsync($"run{number}.csv", SugarProfile.Rows((One, number, $"0.05{number}")));
        }

        var batches = FolderScan.List(folder).Select(file => (IReadOnlyList<ReadyFile>)[new ReadyFile(file, profile)]).ToList();
        await using (var results = new FileIntake(warehouse, new FileArchive(bench.Archive), bench.Time).TakeAsync(folder, batches, _ => Task.CompletedTask, Stop).GetAsyncEnumerator(Stop))
        {
            Assert.True(await results.MoveNextAsync());
            database.IsAway = true;
            await Assert.ThrowsAsync<OutageException>(async () => await results.MoveNextAsync());
        }

        Assert.Empty(Directory.EnumerateFiles(bench.Archive, "*.draft", SearchOption.AllDirectories));
        await bench.LookAsync();

        Assert.Equal(4, await bench.OneAsync<int>("select count(*) from reading"));
        Assert.Equal(4, await bench.OneAsync<int>("select count(*) from source_file"));
        Assert.Equal(4, await bench.OneAsync<int>("select count(*) from arrival where put_away = 1"));
    }

    [Fact]
    public async Task Keeper_WhenTheDatabaseIsAwayForAWhile_SaysSoAndAuditsAfterwards()
    {
        await using var bench = await IntakeBench.CreateAsync();
        await bench.DropAsync("run1.csv", SugarProfile.Rows((One, 1, "0.052")));
        await bench.LookAsync();
        var database = new OutageDialect(bench.Warehouse.Dialect) { IsAway = true };
        using var warehouse = new LabWarehouse(database, TimeProvider.System);
        var log = new LogBook<WarehouseKeeper>();
        using var keeper = new WarehouseKeeper(warehouse, Options.Create(bench.Lab), bench.Time, log);
        await keeper.StartAsync(Stop);
        await log.WaitForAsync("AuditNotDone");

        database.IsAway = false;
        await log.WaitForAsync("AuditDone 1 1 0", () => bench.Time.Advance(TimeSpan.FromMinutes(10)));

        Assert.Single(Directory.GetFiles(bench.Lab.BackupFolder, "*.db"));
        await keeper.StopAsync(Stop);
    }
}
