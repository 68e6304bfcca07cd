namespace LabPipeline.Benchmarks;

/// <summary>One large file, drop to committed and again, against sqlite3's own import and scripts into a table with the same unique key.</summary>
internal static class BulkComparison
{
    private const string SqliteName = "sqlite3 .import";
    private const string PythonName = "Python csv + sqlite3";
    private const string RName = "R fread + DBI";

    private const string Ours = "station";
    private const string PutAway = "station, put away";

    /// <summary>First time: ours is over when the readings can be queried, theirs when the process has ended.</summary>
    public static async Task<IReadOnlyList<Goal>> RunAsync(string[] args)
    {
        var (rows, rounds) = (Figures.Number(args, 0, 1_000_000), Figures.Number(args, 1, 5));
        var hasR = await OtherSide.HasRAsync();
        var folder = Directory.CreateTempSubdirectory("labpipeline-bulk-").FullName;
        try
        {
            var (times, processor, peak) = (new Rounds(), new List<double>(), 0L);
            for (var round = 1; round <= rounds; round++)
            {
                var file = Path.Combine(folder, "bulk.csv");
                SugarFile.Write(file, rows, round);
                await OtherAsync(times, SqliteName, folder, database => OtherSide.SqliteImportAsync(database, file));
                await OtherAsync(times, PythonName, folder, database => OtherSide.PythonImportAsync(database, file));
                if (hasR)
                {
                    await OtherAsync(times, RName, folder, database => OtherSide.RImportAsync(database, file));
                }

                var measured = await StationAsync(times, Path.Combine(folder, "data"), file, rows);
                processor.Add(measured.Processor);
                peak = Math.Max(peak, measured.Peak);
                times.PrintLast(round);
            }

            Figures.Print($"medians of {rounds} interleaved rounds, {rows:N0} rows x 8 columns{(hasR ? "" : "; R with data.table, DBI and RSQLite is not installed")}");
            times.PrintTable(Ours, rows, "rows");
            Figures.Print($"station: processor {Figures.Median(processor):0.00} s, peak memory {Figures.Mebibytes(peak):0} MB");
            return Goals(times, Figures.Mebibytes(peak));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The same content under another name: recognised by its hash, against scripts that offer every row again.</summary>
    public static async Task<IReadOnlyList<Goal>> RunAgainAsync(string[] args)
    {
        var (rows, rounds) = (Figures.Number(args, 0, 1_000_000), Figures.Number(args, 1, 5));
        var folder = Directory.CreateTempSubdirectory("labpipeline-again-").FullName;
        try
        {
            var (file, database) = (Path.Combine(folder, "again.csv"), Path.Combine(folder, "other.db"));
            SugarFile.Write(file, rows, round: 1);
            await OtherSide.PythonImportAsync(database, file);
            var times = new Rounds();
            await using var station = await StationProcess.StartAsync(Path.Combine(folder, "data"), SugarFile.Profile);
            File.Copy(file, Path.Combine(folder, "first.csv"));
            File.Move(Path.Combine(folder, "first.csv"), Path.Combine(station.Drop, "first.csv"));
            await station.UntilAsync("select count(*) from arrival where put_away = 1", 1);
            for (var round = 1; round <= rounds; round++)
            {
                times.Add(PythonName, await OtherSide.PythonImportAsync(database, file));
                var copy = Path.Combine(folder, $"again-{round}.csv");
                File.Copy(file, copy);
                File.Move(copy, Path.Combine(station.Drop, $"again-{round}.csv"));
                times.Add(Ours, await station.UntilAsync("select count(*) from arrival where again = 1", round));
                times.PrintLast(round);
            }

            Figures.Print($"same file again, medians of {rounds} interleaved rounds, {rows:N0} rows");
            times.PrintTable(Ours, rows, "rows");
            return [new("same file again, against Python", times.Median(PythonName) / times.Median(Ours), 8)];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task OtherAsync(Rounds times, string name, string folder, Func<string, Task<double>> import)
    {
        var database = Path.Combine(folder, "other.db");
        times.Add(name, await import(database));
        OtherSide.Forget(database);
    }

    private static async Task<(double Processor, long Peak)> StationAsync(Rounds times, string data, string file, int rows)
    {
        try
        {
            await using var station = await StationProcess.StartAsync(data, SugarFile.Profile);
            var before = station.ProcessorSeconds;
            File.Move(file, Path.Combine(station.Drop, "bulk.csv"));
            var committed = await station.UntilAsync("select coalesce(max(new_count), 0) from source_file", rows);
            times.Add(Ours, committed);
            var processor = station.ProcessorSeconds - before;
            times.Add(PutAway, committed + await station.UntilAsync("select count(*) from arrival where put_away = 1", 1));
            return (processor, station.PeakBytes);
        }
        finally
        {
            Directory.Delete(data, recursive: true);
        }
    }

    private static List<Goal> Goals(Rounds times, double peak)
    {
        var ours = times.Median(Ours);
        return
        [
            new("one large file, rate against sqlite3 .import", times.Median(SqliteName) / ours, 0.8),
            new("one large file, rate against Python", times.Median(PythonName) / ours, 1.1),
            new("one large file, peak memory in MB", peak, 150, AtMost: true, Slack: 0),
        ];
    }
}
