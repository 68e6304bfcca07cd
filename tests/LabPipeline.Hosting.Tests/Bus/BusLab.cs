using System.Diagnostics;
using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>A process of the pipeline with a warehouse of its own, a bus, and one consumer; it can be stopped and started again.</summary>
internal sealed class BusLab : IAsyncDisposable
{
    /// <summary>Shorter waits than a laboratory's, in the same proportions.</summary>
    public static readonly BusPatience Brisk = new()
    {
        FirstRetry = TimeSpan.FromMilliseconds(20),
        LongestRetry = TimeSpan.FromMilliseconds(200),
        WarehousePause = TimeSpan.FromMilliseconds(200),
        Suspicion = TimeSpan.FromMilliseconds(400),
    };

    /// <summary>Shortened once more, so that silence is noticed within seconds.</summary>
    public static readonly BusPatience Alert = Brisk with
    {
        LookEvery = TimeSpan.FromSeconds(1),
        Answer = TimeSpan.FromSeconds(3),
        Publish = TimeSpan.FromSeconds(4),
        Start = TimeSpan.FromSeconds(8),
        Stop = TimeSpan.FromSeconds(2),
        LastWrites = TimeSpan.FromSeconds(1),
    };

    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(180);

    private readonly ScratchFolder _folder = new();
    private readonly BusPatience _patience;
    private IHost? _host;
    private int _sent;

    public BusLab(IReadOnlyDictionary<string, string?> settings, BusPatience patience)
    {
        Settings = new Dictionary<string, string?>(settings);
        _patience = patience;
    }

    public Handling Handling { get; } = new();

    /// <summary>Those of its next start.</summary>
    public Dictionary<string, string?> Settings { get; }

    public int Sent => _sent;

    public LabWarehouse Warehouse => _host!.Services.GetRequiredService<LabWarehouse>();

    public LabBusHost Bus => _host!.Services.GetRequiredService<LabBusHost>();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<BusLab> StartAsync(IReadOnlyDictionary<string, string?> settings, BusPatience? patience = null)
    {
        var lab = new BusLab(settings, patience ?? Brisk);
        await lab.StartAsync();
        return lab;
    }

    public async Task StartAsync()
    {
        var builder = Host.CreateApplicationBuilder();
        builder.Configuration.AddInMemoryCollection(Settings);
        builder.Configuration.AddInMemoryCollection([new("Lab:DataFolder", _folder.Path)]);
        builder.Services.AddSingleton(_patience);
        LabHost.Compose(builder, new NotingModule(Handling));
        _host = builder.Build();
        await LabHost.PrepareAsync(_host.Services, Stop);
        await Warehouse.WriteAsync(session => session.Connection.ExecuteAsync("create table if not exists effect (file_id integer not null)", transaction: session.Transaction), Stop);
        await _host.StartAsync(Stop);
    }

    /// <summary>Stops the process as its service manager does.</summary>
    public async Task StopAsync()
    {
        await _host!.StopAsync(Stop);
        _host.Dispose();
        _host = null;
    }

    /// <summary>Commits <paramref name="count"/> messages as an intake does: into the outbox.</summary>
    public async Task SendAsync(int count)
    {
        await Warehouse.WriteAsync(
            async session =>
            {
                foreach (var number in Enumerable.Range(_sent + 1, count))
                {
                    await OutboxStore.AddAsync(session, MessageOf(number), $"{number}", DateTimeOffset.UtcNow);
                }
            },
            Stop);
        _sent += count;
        _host!.Services.GetRequiredService<RelaySignal>().Wake();
    }

    public async Task<IReadOnlyList<int>> EffectsAsync() => await Warehouse.ReadAsync(
        async session => (await session.Connection.QueryAsync<int>("select file_id from effect order by file_id")).AsList(), Stop);

    /// <summary>Waits until every message sent so far has had its effect, and returns how long that took.</summary>
    public async Task<TimeSpan> AllHandledAsync()
    {
        var watch = Stopwatch.StartNew();
        await UntilAsync(async () => (await EffectsAsync()).Distinct().Count() == _sent, "all messages handled");
        return watch.Elapsed;
    }

    /// <summary>No message lost, none in effect twice.</summary>
    public async Task AssertEachOnceAsync() => Assert.Equal(Enumerable.Range(1, _sent), await EffectsAsync());

    public Task<IReadOnlyList<ParkedMessage>> ParkedAsync() => Warehouse.ReadAsync(ParkedMessageStore.ListAsync, Stop);

    public Task<int> UnpublishedAsync() => Warehouse.ReadAsync(OutboxStore.CountUnpublishedAsync, Stop);

    public async Task<HealthStatus> HealthAsync() => (await _host!.Services.GetRequiredService<HealthCheckService>().CheckHealthAsync(Stop)).Status;

    public async Task ReplayAsync(ParkedMessage message)
    {
        await Warehouse.WriteAsync(session => ParkedMessageStore.ReplayAsync(session, message, "technician 1", "cause mended", DateTimeOffset.UtcNow), Stop);
        _host!.Services.GetRequiredService<RelaySignal>().Wake();
    }

    /// <summary>Lines of the log that hold <paramref name="name"/>, written by a process that has ended.</summary>
    public IReadOnlyList<string> LogLines(string name) =>
        [.. Directory.GetFiles(Path.Combine(_folder.Path, "logs")).SelectMany(File.ReadLines).Where(line => line.Contains(name, StringComparison.Ordinal))];

    public async Task UntilAsync(Func<Task<bool>> reached, string what)
    {
        var watch = Stopwatch.StartNew();
        while (!await reached())
        {
            Assert.True(watch.Elapsed < LongestWait, $"Not reached within {LongestWait.TotalSeconds:0} s: {what}. {await DescribeAsync()}");
            await Task.Delay(50, Stop);
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_host is not null)
        {
            await _host.StopAsync(CancellationToken.None);
            _host.Dispose();
        }

        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    private static FileRefused MessageOf(int number) => new(number, $"file {number}", "test");

    private async Task<string> DescribeAsync() =>
        $"{_sent} sent, {(await EffectsAsync()).Count} effects, {await UnpublishedAsync()} unpublished, {(await ParkedAsync()).Count} parked, bus {Bus.Condition}.";
}
