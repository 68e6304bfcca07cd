using System.Diagnostics;
using System.Globalization;
using LabPipeline.Hosting;
using LabPipeline.Station;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Benchmarks;

/// <summary>Small files at a steady rate: from the drop of each to its readings in the warehouse, and to its alert at the mail server.</summary>
/// <remarks>Each file raises one alert. The throttle for storms is opened wide: it holds mails back on purpose, which is not what is timed here.</remarks>
internal static class LatencyTiming
{
    private const string Unthrottled = "1000000";

    // The first files also pay for the compilation of everything they run through; a station compiles once in months.
    private const int WarmingFiles = 20;

    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(50);

    public static async Task<int> RunAsync(string[] args)
    {
        var (rate, seconds) = (Option(args, "--rate", 10), Option(args, "--seconds", 120));
        var folder = Directory.CreateTempSubdirectory("labpipeline-latency-").FullName;
        try
        {
            await using var mailbox = new AlertMailbox();
            using var host = await PrepareAsync(folder, mailbox);
            var warehouse = host.Services.GetRequiredService<LabWarehouse>();
            var barcodes = await LoadAsync(warehouse, WarmingFiles + (rate * seconds));
            await host.StartAsync();
            await UntilAsync(async () => (await warehouse.ReadAsync(HeartbeatStore.ListAsync, default)).Count(beat => beat.CaughtUpAt is not null) >= 4);
            var run = new LatencyRun(folder, mailbox);
            await run.DropAsync(barcodes[..WarmingFiles], rate);
            await UntilAsync(() => Task.FromResult(mailbox.Mails.Count >= WarmingFiles));
            var measured = barcodes[WarmingFiles..];
            var report = await run.MeasureAsync(measured, rate, () => UntilAsync(() => Task.FromResult(mailbox.Mails.Count >= WarmingFiles + measured.Length)));
            await host.StopAsync();
            return report.Print(await CountAsync(folder, WarmingFiles));
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<IHost> PrepareAsync(string folder, AlertMailbox mailbox)
    {
        var host = StationHost.Build(folder, new Dictionary<string, string?>
        {
            ["Notifier:SmtpHost"] = "127.0.0.1",
            ["Notifier:SmtpPort"] = mailbox.Port.ToString(CultureInfo.InvariantCulture),
            ["Notifier:SmtpSecurity"] = "none",
            ["Notifier:MailFrom"] = "quality@lab.example",
            ["Notifier:Emails:manager:To"] = "manager@lab.example",
            ["Notifier:Emails:manager:Levels:0"] = "block",
            ["Notifier:Emails:manager:Levels:1"] = "hold",
            ["Notifier:StormMessages"] = Unthrottled,
        });
        await LabHost.PrepareAsync(host.Services, CancellationToken.None);
        var profiles = Path.Combine(folder, "profiles", "sugar");
        Directory.CreateDirectory(profiles);
        await File.WriteAllTextAsync(Path.Combine(profiles, "latency.json"), LatencyTrials.Profile);
        return host;
    }

    private static async Task<string[]> LoadAsync(LabWarehouse warehouse, int samples)
    {
        var now = TimeProvider.System.GetUtcNow();
        var plans = LatencyTrials.Plans(samples, DateOnly.FromDateTime(now.UtcDateTime));
        foreach (var plan in plans)
        {
            await warehouse.WriteAsync(session => PlanStore.LoadAsync(session, plan, now, "benchmark"), CancellationToken.None);
        }

        return [.. plans.SelectMany(PlanSamples.Of).Select(sample => sample.Barcode.Text).Take(samples)];
    }

    /// <summary>Waits until <paramref name="reached"/>, but not for ever: what never came is counted.</summary>
    private static async Task UntilAsync(Func<Task<bool>> reached)
    {
        var watch = Stopwatch.StartNew();
        while (watch.Elapsed < LongestWait && !await reached())
        {
            await Task.Delay(LookEvery);
        }
    }

    private static async Task<(long Stored, long Alerts)> CountAsync(string folder, int warmed)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "warehouse.db")};Mode=ReadOnly;Pooling=false");
        await connection.OpenAsync();
        async Task<long> Ask(string sql)
        {
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            return (long)(await command.ExecuteScalarAsync())! - warmed;
        }

        return (await Ask("select count(*) from source_file where new_count > 0"), await Ask("select count(*) from qc_alert"));
    }

    private static int Option(string[] args, string name, int otherwise) =>
        Array.IndexOf(args, name) is >= 0 and var at ? int.Parse(args[at + 1], CultureInfo.InvariantCulture) : otherwise;
}
