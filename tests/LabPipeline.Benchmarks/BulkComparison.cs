namespace LabPipeline.Benchmarks;

/// <summary>One large file, drop to committed and again, against sqlite3's own import and scripts into a table with the same unique key.</summary>
internal static class BulkComparison
{
    private const string SqliteName = "sqlite3 .import";
    private const string PythonName = "Python csv + sqlite3";
    private const string RName = "R fread + DBI";

    private static readonly Dictionary<string, List<double>> Times = [];

    /// <summary>First time: ours is over when the readings can be queried, theirs when the process has ended.</summary>
    public static async Task<int> RunAsync(string[] args)
    {
        var (rows, rounds) = (Figures.Number(args, 0, 1_000_000), Figures.Number(args, 1, 5));
        var hasR = await OtherSide.HasRAsync();
        var folder = Directory.CreateTempSubdirectory("labpipeline-bulk-").FullName;
        try
        {
            var (processor, peak) = (new List<double>(), 0L);
            for (var round = 1; round <= rounds; round++)
            {
                var file = Path.Combine(folder, "bulk.csv");
                SugarFile.Write(file, rows, round);
                await OtherAsync(SqliteName, folder, database => OtherSide.SqliteImportAsync(database, file));
                await OtherAsync(PythonName, folder, database => OtherSide.PythonImportAsync(database, file));
                if (hasR)
                {
                    await OtherAsync(RName, folder, database => OtherSide.RImportAsync(database, file));
                }

                var measured = await StationAsync(Path.Combine(folder, "data"), file, rows);
                processor.Add(measured.Processor);
                peak = Math.Max(peak, measured.Peak);
                Figures.Print($"round {round}: {string.Join(", ", Times.Select(entry => FormattableString.Invariant($"{entry.Key} {entry.Value[^1]:0.00} s")))}");
            }

            Figures.Print($"medians of {rounds} interleaved rounds, {rows:N0} rows x 8 columns{(hasR ? "" : "; R with data.table, DBI and RSQLite is not installed")}");
            PrintTable(rows);
            Figures.Print($"station: processor {Figures.Median(processor):0.00} s, peak memory {Figures.Mebibytes(peak):0} MB");
            Figures.PrintLoad();
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The same content under another name: recognised by its hash, against scripts that offer every row again.</summary>
    public static async Task<int> RunAgainAsync(string[] args)
    {
        var (rows, rounds) = (Figures.Number(args, 0, 1_000_000), Figures.Number(args, 1, 5));
        var folder = Directory.CreateTempSubdirectory("labpipeline-again-").FullName;
        try
        {
            var (file, database) = (Path.Combine(folder, "again.csv"), Path.Combine(folder, "other.db"));
            SugarFile.Write(file, rows, round: 1);
            await OtherSide.PythonImportAsync(database, file);
            await using var station = await StationProcess.StartAsync(Path.Combine(folder, "data"), SugarFile.Profile);
            File.Copy(file, Path.Combine(folder, "first.csv"));
            File.Move(Path.Combine(folder, "first.csv"), Path.Combine(station.Drop, "first.csv"));
            await station.UntilAsync("select count(*) from arrival where put_away = 1", 1);
            for (var round = 1; round <= rounds; round++)
            {
                Add(PythonName, await OtherSide.PythonImportAsync(database, file));
                var copy = Path.Combine(folder, $"again-{round}.csv");
                File.Copy(file, copy);
                File.Move(copy, Path.Combine(station.Drop, $"again-{round}.csv"));
                Add("station", await station.UntilAsync("select count(*) from arrival where again = 1", round));
            }

            Figures.Print($"same file again, medians of {rounds} interleaved rounds, {rows:N0} rows");
            PrintTable(rows);
            Figures.PrintLoad();
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task OtherAsync(string name, string folder, Func<string, Task<double>> import)
    {
        var database = Path.Combine(folder, "other.db");
        Add(name, await import(database));
        OtherSide.Forget(database);
    }

    private static async Task<(double Processor, long Peak)> StationAsync(string data, string file, int rows)
    {
        try
        {
            await using var station = await StationProcess.StartAsync(data, SugarFile.Profile);
            var before = station.ProcessorSeconds;
            File.Move(file, Path.Combine(station.Drop, "bulk.csv"));
            var committed = await station.UntilAsync("select coalesce(max(new_count), 0) from source_file", rows);
            Add("station", committed);
            var processor = station.ProcessorSeconds - before;
            Add("station, put away", committed + await station.UntilAsync("select count(*) from arrival where put_away = 1", 1));
            return (processor, station.PeakBytes);
        }
        finally
        {
            Directory.Delete(data, recursive: true);
        }
    }

    private static void Add(string name, double seconds)
    {
        if (!Times.TryGetValue(name, out var times))
        {
            Times.Add(name, times = []);
        }

        times.Add(seconds);
    }

    private static void PrintTable(int rows)
    {
        var ours = Figures.Median(Times["station"]);
        foreach (var (name, times) in Times)
        {
            var median = Figures.Median(times);
            Figures.Print($"{name,-24} {median,7:0.00} s {rows / median,12:N0} rows/s   station's time to committed is {ours / median:0.00} of it");
        }
    }
}
