using Dapper;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Storing;
using LabPipeline.Intake.Tests.Histories;
using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace LabPipeline.Intake.Tests.Storing;

/// <summary>A data folder with one intake worker for sugar files, whose looks the test decides.</summary>
internal sealed class IntakeBench : IAsyncDisposable
{
    private readonly ScratchFolder _folder = new();
    private readonly LabOptions _lab;

    private IntakeBench(string? dataFolder)
    {
        _lab = new LabOptions { DataFolder = dataFolder ?? _folder.Path };
        Warehouse = new LabWarehouse(new SqliteDialect(_lab.WarehouseFile), TimeProvider.System);
        Worker = NewWorker();
    }

    public JumpingTime Time { get; } = new(new DateTimeOffset(2026, 1, 14, 22, 0, 0, TimeSpan.Zero));

    public LabWarehouse Warehouse { get; }

    public RelaySignal Relay { get; } = new();

    public IntakeWorker Worker { get; private set; }

    public LabOptions Lab => _lab;

    public string Archive => _lab.ArchiveFolder;

    public string WarehouseFile => _lab.WarehouseFile;

    public string Drop => Path.Combine(_lab.DropFolder, "sugar");

    public static Task<IntakeBench> CreateAsync(params string[] profiles) => CreateInAsync(null, profiles);

    /// <summary>In a folder that outlives it.</summary>
    public static async Task<IntakeBench> CreateInAsync(string? dataFolder, params string[] profiles)
    {
        var bench = new IntakeBench(dataFolder);
        await new Migrator(bench.Warehouse, bench.Time).MigrateAsync(CancellationToken.None);
        Directory.CreateDirectory(bench.Drop);
        var shelf = Path.Combine(bench._lab.ProfileFolder, "sugar");
        Directory.CreateDirectory(shelf);
        foreach (var (profile, index) in (profiles.Length == 0 ? [SugarProfile.RenamedIn] : profiles).Select((profile, index) => (profile, index)))
        {
            await File.WriteAllTextAsync(Path.Combine(shelf, $"profile-{index}.json"), profile);
        }

        return bench;
    }

    /// <summary>As after a crash: a new worker over the same folders and warehouse.</summary>
    public void Restart()
    {
        Worker.Dispose();
        Worker = NewWorker();
    }

    public Task DropAsync(string name, string text) => File.WriteAllTextAsync(Path.Combine(Drop, name), text);

    public Task LookAsync() => Worker.LookAsync(TestContext.Current.CancellationToken);

    /// <summary>Looks, and leaves everything as if the process had ended between the commit and the first original put away.</summary>
    public async Task LookAndEndBeforePutAwayAsync()
    {
        var before = Directory.EnumerateFiles(Drop).Select(path => (Path: path, Bytes: File.ReadAllBytes(path), At: File.GetLastWriteTimeUtc(path))).ToList();
        await LookAsync();
        foreach (var file in before.Where(file => !File.Exists(file.Path)))
        {
            await File.WriteAllBytesAsync(file.Path, file.Bytes);
            File.SetLastWriteTimeUtc(file.Path, file.At);
            var arrival = new { name = Path.GetFileName(file.Path), at = SeenFile.ModifiedAtOf(new FileInfo(file.Path)) };
            await Warehouse.WriteAsync(
                session => session.Connection.ExecuteAsync("update arrival set put_away = 0 where name = @name and modified_at = @at", arrival, session.Transaction),
                CancellationToken.None);
        }

        Restart();
    }

    /// <summary>Takes the named entries as if a scan had found them complete, and puts none away.</summary>
    public Task<TakeResult> TakeAsync(params string[] names)
    {
        var seen = FolderScan.List(new DropFolder("sugar", Drop));
        return TakeAsync([.. names.Select(name => seen.Single(file => file.Name == name))]);
    }

    /// <summary>Takes what an earlier scan had found.</summary>
    public Task<TakeResult> TakeAsync(params SeenFile[] files)
    {
        var profile = ProfileDocument.Parse(SugarProfile.RenamedIn, "profile.json").Profile!;
        return new FileIntake(Warehouse, new FileArchive(_lab.ArchiveFolder), Time)
            .TakeAsync(new DropFolder("sugar", Drop), [[.. files.Select(file => new ReadyFile(file, profile))]], _ => Task.CompletedTask, TestContext.Current.CancellationToken)
            .SingleAsync(TestContext.Current.CancellationToken).AsTask();
    }

    /// <summary>As if the folder's worker were another process.</summary>
    public Task HoldByAsync(string holder) => Warehouse.WriteAsync(
        session => session.Connection.ExecuteAsync("update lease set holder = @holder where name = 'intake-sugar'", new { holder }, session.Transaction),
        TestContext.Current.CancellationToken);

    public async Task<IReadOnlyList<ArrivalListing>> ArrivalsAsync() =>
        [.. (await Warehouse.ReadAsync(session => ArrivalListStore.ListAsync(session, null), TestContext.Current.CancellationToken))
            .OrderBy(row => row.Name, StringComparer.Ordinal)];

    public async Task<string> StateOfAsync(string name) => (await ArrivalsAsync()).Single(row => row.Name == name).State;

    public Task<IReadOnlyList<T>> QueryAsync<T>(string sql) => Warehouse.ReadAsync(
        async session => (IReadOnlyList<T>)(await session.Connection.QueryAsync<T>(sql)).AsList(), TestContext.Current.CancellationToken);

    public async Task<T> OneAsync<T>(string sql) => (await QueryAsync<T>(sql)).Single();

    public ValueTask DisposeAsync()
    {
        Worker.Dispose();
        Relay.Dispose();
        Warehouse.Dispose();
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }

    private IntakeWorker NewWorker() => new(
        new IntakeKind(QuantityKind.Sugar, "sugar"),
        Warehouse,
        Relay,
        Time,
        Options.Create(_lab),
        Options.Create(new IntakeOptions()),
        NullLogger<IntakeWorker>.Instance);
}
