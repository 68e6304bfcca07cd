using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Benchmarks;

/// <summary>Drop to committed, against sqlite3's own import into a table with the same unique key, WAL and synchronous FULL.</summary>
internal static class BulkComparison
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(10);

    public static async Task<int> RunAsync(string[] args)
    {
        var rows = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1_000_000;
        var rounds = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 5;
        var folder = Directory.CreateTempSubdirectory("labpipeline-bulk-").FullName;
        try
        {
            var ours = new List<double>();
            var theirs = new List<double>();
            var processor = new List<double>();
            long peak = 0;
            for (var round = 1; round <= rounds; round++)
            {
                var file = Path.Combine(folder, "bulk.csv");
                SugarFile.Write(file, rows, round);
                theirs.Add(await ImportAsync(folder, file));
                var (seconds, processorSeconds, peakBytes) = await StationAsync(Path.Combine(folder, "data"), file, rows);
                ours.Add(seconds);
                processor.Add(processorSeconds);
                peak = Math.Max(peak, peakBytes);
                Print($"round {round}: station {seconds:0.00} s (processor {processorSeconds:0.00} s), sqlite3 {theirs[^1]:0.00} s");
            }

            Print($"median: station {Median(ours):0.00} s ({rows / Median(ours):N0} rows/s), sqlite3 .import {Median(theirs):0.00} s ({rows / Median(theirs):N0} rows/s)");
            Print($"station processor time {Median(processor):0.00} s; ratio of rates {Median(theirs) / Median(ours):0.00}, station peak memory {peak / 1048576.0:0} MB");
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<double> ImportAsync(string folder, string file)
    {
        var database = Path.Combine(folder, "import.db");
        var script = $"""
            pragma journal_mode = wal;
            pragma synchronous = full;
            create table r (sample text, run text, seq integer, extract text, replicate integer, glucose real, operator text, time text, unique (run, seq));
            .import --csv --skip 1 {file} r
            """;
        var start = new ProcessStartInfo("sqlite3", [database]) { RedirectStandardInput = true, RedirectStandardOutput = true };
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        await process.StandardInput.WriteAsync(script + "\n");
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        var seconds = watch.Elapsed.TotalSeconds;
        foreach (var path in Directory.EnumerateFiles(folder, "import.db*"))
        {
            File.Delete(path);
        }

        return seconds;
    }

    private static async Task<(double Seconds, double ProcessorSeconds, long PeakBytes)> StationAsync(string data, string file, int rows)
    {
        Directory.CreateDirectory(Path.Combine(data, "profiles", "sugar"));
        await File.WriteAllTextAsync(Path.Combine(data, "profiles", "sugar", "bulk.json"), SugarFile.Profile);
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "LabPipeline.Station.dll"), "run", "--without-board", "--data", data]) { RedirectStandardOutput = true };
        using var process = Process.Start(start)!;
        try
        {
            var drop = Path.Combine(data, "drop", "sugar");
            await UntilAsync(() => Directory.Exists(Path.Combine(drop, "taken")) && Count(data, "select count(*) from heartbeat where service like 'intake-%' and caught_up_at is not null") == 4);
            var before = process.TotalProcessorTime;
            var watch = Stopwatch.StartNew();
            File.Move(file, Path.Combine(drop, "bulk.csv"));
            await UntilAsync(() => Count(data, "select coalesce(max(new_count), 0) from source_file") == rows);
            var seconds = watch.Elapsed.TotalSeconds;
            process.Refresh();
            return (seconds, (process.TotalProcessorTime - before).TotalSeconds, PeakOf(process.Id));
        }
        finally
        {
            process.Kill();
            await process.WaitForExitAsync();
            Directory.Delete(data, recursive: true);
        }
    }

    private static async Task UntilAsync(Func<bool> reached)
    {
        while (!reached())
        {
            await Task.Delay(LookEvery);
        }
    }

    private static long Count(string data, string sql)
    {
        try
        {
            using var connection = new SqliteConnection($"Data Source={Path.Combine(data, "warehouse.db")};Mode=ReadOnly;Pooling=false");
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            return (long)command.ExecuteScalar()!;
        }
        catch (SqliteException)
        {
            // The warehouse is still being made.
            return -1;
        }
    }

    /// <summary>Highest resident size so far; Linux only.</summary>
    private static long PeakOf(int processId)
    {
        var line = File.ReadLines($"/proc/{processId}/status").First(text => text.StartsWith("VmHWM:", StringComparison.Ordinal));
        return long.Parse(line.AsSpan(6).Trim().ToString().Split(' ')[0], CultureInfo.InvariantCulture) * 1024;
    }

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
