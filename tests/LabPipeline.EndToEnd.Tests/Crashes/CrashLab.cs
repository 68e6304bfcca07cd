using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using Dapper;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Station;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Durability;
using LabPipeline.Warehouse.Plan;
using Microsoft.Data.Sqlite;

namespace LabPipeline.EndToEnd.Tests.Crashes;

/// <summary>A data folder whose station is ended again and again; the same warehouse serves all rounds.</summary>
internal sealed class CrashLab : IDisposable
{
    private static readonly TimeSpan LongestSettling = TimeSpan.FromMinutes(2);

    // A round that waits whole took a tenth of a second on a busy machine.
    private static readonly TimeSpan LongestSettlingOfARound = TimeSpan.FromSeconds(0.5);

    private readonly ScratchFolder _folder = new();
    private readonly SmallSeason _season;
    private readonly LabOptions _lab;
    private readonly Dictionary<string, string> _dropped = [];
    private readonly HashSet<string> _checkedCopies = [];
    private int _round;

    private CrashLab(SmallSeason season)
    {
        _season = season;
        _lab = new LabOptions { DataFolder = _folder.Path };
    }

    public string Path => _folder.Path;

    public int Rounds => _round;

    private string DropFolder => System.IO.Path.Combine(_lab.DropFolder, "sugar");

    public static async Task<CrashLab> CreateAsync(SmallSeason season, CancellationToken cancellationToken)
    {
        var lab = new CrashLab(season);
        var profiles = System.IO.Path.Combine(lab._lab.ProfileFolder, "sugar");
        Directory.CreateDirectory(profiles);
        Directory.CreateDirectory(lab.DropFolder);
        await File.WriteAllTextAsync(System.IO.Path.Combine(profiles, "csv.json"), SmallSeason.Profile, cancellationToken);
        await File.WriteAllTextAsync(System.IO.Path.Combine(profiles, "txt.json"), SmallSeason.DoneFileProfile, cancellationToken);
        await lab.LoadPlanAsync(cancellationToken);
        return lab;
    }

    public async Task LoadPlanAsync(CancellationToken cancellationToken)
    {
        // A connection kept open would still write to a file that was set aside.
        SqliteConnection.ClearAllPools();
        using var warehouse = await StationWarehouse.CreateAsync(_lab, cancellationToken);
        await warehouse.WriteAsync(session => PlanStore.LoadAsync(session, _season.Plan, DateTimeOffset.UtcNow, "test"), cancellationToken);
    }

    /// <summary>Puts the files of the next round into the drop folder, each renamed into its place as a careful instrument does.</summary>
    public void DropNext()
    {
        foreach (var (name, bytes) in _season.FilesOf(_round))
        {
            var aside = System.IO.Path.Combine(_folder.Path, name);
            File.WriteAllBytes(aside, bytes);
            File.Move(aside, System.IO.Path.Combine(DropFolder, name));
            if (!name.EndsWith(".done", StringComparison.Ordinal))
            {
                _dropped.Add(name, Convert.ToHexStringLower(SHA256.HashData(bytes)));
            }
        }

        _round++;
    }

    /// <summary>Drops one file more, renamed into its place.</summary>
    public void Drop(string name, Action<Stream> write)
    {
        var aside = System.IO.Path.Combine(_folder.Path, name);
        using (var file = File.Create(aside))
        {
            write(file);
        }

        File.Move(aside, System.IO.Path.Combine(DropFolder, name));
    }

    public async Task<string> StateOfAsync(string name)
    {
        await using var warehouse = await OpenAsync();
        return await warehouse.ExecuteScalarAsync<string>("select f.state from arrival a join source_file f on f.file_id = a.file_id where a.name = @name", new { name }) ?? "";
    }

    public ProductProcess Start(DurableStep? crashAt = null, int pass = 1)
    {
        var settings = new Dictionary<string, string> { ["Intake__ScanInterval"] = "00:00:00.2" };
        if (crashAt is { } step)
        {
            settings.Add(CrashPoint.Variable, string.Create(CultureInfo.InvariantCulture, $"{step}:{pass}"));
        }

        return ProductProcess.Start("Station", settings, ["run", "--without-board", "--data", _folder.Path]);
    }

    /// <returns>What is left to do: files to put away, messages to handle, alerts to deliver; null when nothing is.</returns>
    public async Task<string?> UnsettledAsync()
    {
        if (Directory.EnumerateFiles(DropFolder).FirstOrDefault(path => !path.EndsWith(".done", StringComparison.Ordinal)) is { } file)
        {
            return $"{System.IO.Path.GetFileName(file)} lies in the drop folder";
        }

        await using var warehouse = await OpenAsync();
        foreach (var endpoint in EndpointCatalogue.All)
        {
            var open = await warehouse.ExecuteScalarAsync<int>(
                "select count(*) from outbox o where o.type = @type and not exists (select 1 from inbox i where i.message_id = o.message_id and i.consumer = @name)",
                new { type = endpoint.Message.FullName, name = endpoint.Name });
            if (open > 0)
            {
                return $"{endpoint.Name} has {open} messages to handle";
            }
        }

        var (arrivals, messages, deliveries) = await warehouse.QuerySingleAsync<(int, int, int)>(
            """
            select (select count(*) from arrival where put_away = 0), (select count(*) from outbox where published_at is null),
                   (select count(*) from delivery where state = 'pending')
            """);
        return arrivals + messages + deliveries == 0 ? null : $"{arrivals} arrivals, {messages} messages and {deliveries} deliveries are open";
    }

    /// <summary>Runs the station undisturbed until nothing is left to do.</summary>
    public async Task SettleAsync(CancellationToken cancellationToken)
    {
        using var station = Start();
        var longest = LongestSettling + (_round * LongestSettlingOfARound);
        var end = DateTime.UtcNow + longest;
        while (await UnsettledAsync() is { } left)
        {
            Assert.False(station.HasExited);
            Assert.True(DateTime.UtcNow < end, $"Not settled within {longest}: {left}.");
            await Task.Delay(100, cancellationToken);
        }

        // 143 is the shell's word for SIGTERM: with nothing left to do the stop can come before the station listens for it.
        Assert.Contains(await station.StopAsync(cancellationToken), new[] { 0, 143 });
    }

    /// <summary>What must hold at every moment, whatever was interrupted.</summary>
    public async Task AssertSoundAsync()
    {
        await using var warehouse = await OpenAsync();
        Assert.Equal("ok", await warehouse.ExecuteScalarAsync<string>("pragma quick_check"));

        // No file is gone without being in the ledger under its content.
        var arrivals = (await warehouse.QueryAsync<(string Name, string Sha256)>("select distinct a.name, f.sha256 from arrival a join source_file f on f.file_id = a.file_id"))
            .ToHashSet();
        Assert.Empty(_dropped.Where(file => !File.Exists(System.IO.Path.Combine(DropFolder, file.Key)) && !arrivals.Contains((file.Key, file.Value))).Select(file => $"{file.Key} is lost"));

        // What the ledger acknowledges lies whole in the archive.
        foreach (var (sha256, path) in await warehouse.QueryAsync<(string, string)>("select sha256, archived_as from source_file"))
        {
            if (_checkedCopies.Add(sha256))
            {
                var bytes = await File.ReadAllBytesAsync(System.IO.Path.Combine(_lab.ArchiveFolder, path));
                Assert.Equal(sha256, Convert.ToHexStringLower(SHA256.HashData(bytes)));
            }
        }

        // A reading is one of those in the files, once.
        var glucose = await GlucoseAsync(warehouse);
        Assert.Equal(glucose.Distinct(), glucose);
        Assert.Empty(glucose.Except(Expected()));
    }

    /// <summary>Against the model: every reading of every round, none twice, and every alert handed over.</summary>
    public async Task AssertCompleteAsync()
    {
        await AssertSoundAsync();
        await using var warehouse = await OpenAsync();
        Assert.Equal(Expected(), await GlucoseAsync(warehouse));
        Assert.Equal(2 * _round, await warehouse.ExecuteScalarAsync<int>("select count(*) from qc_alert where rule_name in ('duplicate disagreement', 'file refused')"));
        var told = await File.ReadAllLinesAsync(System.IO.Path.Combine(_folder.Path, "alerts.jsonl"));
        var alerts = told.Select(AlertOf).OfType<int>().ToHashSet();
        Assert.Empty((await warehouse.QueryAsync<int>("select distinct alert_id from delivery where state = 'delivered'")).Except(alerts));
    }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    /// <summary>A crash may have left half a line; its alert stands whole in a later one.</summary>
    private static int? AlertOf(string line)
    {
        try
        {
            using var json = JsonDocument.Parse(line);
            return json.RootElement.GetProperty("data").TryGetProperty("alert", out var alert) ? alert.GetInt32() : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static async Task<IReadOnlyList<string>> GlucoseAsync(SqliteConnection warehouse) =>
    [
        .. (await warehouse.QueryAsync<string>(
            """
            select r.barcode || ' ' || u.run || ' ' || r.row_key || ' ' || r.raw_value from reading r join instrument_run u on u.run_id = r.run_id
            join quantity q on q.quantity_id = r.quantity_id where q.name = 'glucose_in_extract'
            """)).Order(StringComparer.Ordinal),
    ];

    private IReadOnlyList<string> Expected() => [.. Enumerable.Range(0, _round).SelectMany(_season.GlucoseOf).Order(StringComparer.Ordinal)];

    private async Task<SqliteConnection> OpenAsync()
    {
        var connection = new SqliteConnection($"Data Source={_lab.WarehouseFile};Pooling=false");
        await connection.OpenAsync();
        return connection;
    }
}
