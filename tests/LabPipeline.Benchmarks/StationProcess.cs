using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Benchmarks;

/// <summary>A station in a process of its own over a data folder, looked at from outside as an analyst would.</summary>
internal sealed class StationProcess : IAsyncDisposable
{
    private const int Folders = 4;
    private const double IdleSeconds = 0.03;

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(10);
    private static readonly TimeSpan IdleLook = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(30);

    private readonly string _data;
    private readonly Process _process;

    private StationProcess(string data, Process process)
    {
        _data = data;
        _process = process;
    }

    public string Drop => Path.Combine(_data, "drop", "sugar");

    /// <summary>From the start of the process until every drop folder was looked at and nothing waited.</summary>
    public TimeSpan ReadyAfter { get; private set; }

    public double ProcessorSeconds
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime.TotalSeconds;
        }
    }

    /// <summary>Highest resident size so far; 0 where the system does not tell.</summary>
    public long PeakBytes => OperatingSystem.IsLinux()
        ? long.Parse(File.ReadLines($"/proc/{_process.Id}/status").First(text => text.StartsWith("VmHWM:", StringComparison.Ordinal)).AsSpan(6).Trim().ToString().Split(' ')[0], CultureInfo.InvariantCulture) * 1024
        : 0;

    public static async Task<StationProcess> StartAsync(string data, string profile)
    {
        var profiles = Directory.CreateDirectory(Path.Combine(data, "profiles", "sugar")).FullName;
        await File.WriteAllTextAsync(Path.Combine(profiles, "bench.json"), profile);
        var program = await PublishedStation.PathAsync();
        var started = DateTime.UtcNow;
        var watch = Stopwatch.StartNew();
        var process = Process.Start(new ProcessStartInfo(
            "dotnet", [program, "run", "--without-board", "--data", data])
        { RedirectStandardOutput = true })!;
        var station = new StationProcess(data, process);
        await station.UntilAsync($"select count(*) from heartbeat where service like 'intake-%' and caught_up_at >= '{started:yyyy-MM-ddTHH:mm:ss.fff}Z'", Folders);
        station.ReadyAfter = watch.Elapsed;
        return station;
    }

    /// <summary>Waits until the statement counts to at least <paramref name="count"/>.</summary>
    /// <returns>How long that took, up to a look too long.</returns>
    public async Task<double> UntilAsync(string sql, long count)
    {
        var watch = Stopwatch.StartNew();
        using var warehouse = new SqliteConnection($"Data Source={Path.Combine(_data, "warehouse.db")};Mode=ReadOnly;Pooling=false");
        while (Count(warehouse, sql) < count)
        {
            if (watch.Elapsed > LongestWait || _process.HasExited)
            {
                throw new TimeoutException($"The station did not reach {count} of: {sql}");
            }

            await Task.Delay(LookEvery);
        }

        return watch.Elapsed.TotalSeconds;
    }

    /// <summary>Waits until the station does next to nothing.</summary>
    public async Task UntilIdleAsync()
    {
        var before = double.MinValue;
        while (ProcessorSeconds - before > IdleSeconds)
        {
            before = ProcessorSeconds;
            await Task.Delay(IdleLook);
        }
    }

    public async ValueTask DisposeAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
    }

    private static long Count(SqliteConnection warehouse, string sql)
    {
        try
        {
            if (warehouse.State != System.Data.ConnectionState.Open)
            {
                warehouse.Open();
            }

            using var command = warehouse.CreateCommand();
            command.CommandText = sql;
            return (long)command.ExecuteScalar()!;
        }
        catch (SqliteException)
        {
            // The warehouse is still being made.
            warehouse.Close();
            return -1;
        }
    }
}
