namespace LabPipeline.Benchmarks;

/// <summary>Many small files that wait at once, until all are committed, against one Python process that commits each.</summary>
internal static class SmallFilesComparison
{
    private const int RowsPerFile = 50;

    // No sample is in two files: evaluation would read all earlier readings of a sample again with each.
    private const int SamplesPerFile = 2;

    public static async Task<int> RunAsync(string[] args)
    {
        var (files, rounds) = (Figures.Number(args, 0, 1000), Figures.Number(args, 1, 5));
        var (ours, settled, theirs) = (new List<double>(), new List<double>(), new List<double>());
        var folder = Directory.CreateTempSubdirectory("labpipeline-small-").FullName;
        try
        {
            await using var station = await StationProcess.StartAsync(Path.Combine(folder, "data"), SugarFile.Profile);
            for (var round = 0; round <= rounds; round++)
            {
                // Nothing is deleted before the end: ext4 passes over places freed a moment ago one by one, so that making files would be what is timed.
                var waiting = Directory.CreateDirectory(Path.Combine(folder, FormattableString.Invariant($"{round}"))).FullName;
                for (var file = 0; file < files; file++)
                {
                    var number = (round * files) + file;
                    SugarFile.Write(Path.Combine(waiting, FormattableString.Invariant($"{number:00000}.csv")), RowsPerFile, number, number * SamplesPerFile);
                }

                theirs.Add(await OtherSide.PythonFolderAsync(Path.Combine(folder, FormattableString.Invariant($"{round}.db")), waiting));
                var (committed, putAway) = await StationAsync(station, waiting, files, round);
                ours.Add(committed);
                settled.Add(putAway);
                Figures.Print($"round {round}: station {committed:0.00} s (put away {putAway:0.00} s), Python {theirs[^1]:0.00} s{(round == 0 ? " (just started)" : "")}");
            }

            Print(files, [.. ours.Skip(1)], [.. settled.Skip(1)], [.. theirs.Skip(1)]);
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The clock starts when the last file has been renamed in; the first ones may be on their way by then, a few milliseconds.</summary>
    private static async Task<(double Committed, double PutAway)> StationAsync(StationProcess station, string waiting, int files, int round)
    {
        foreach (var path in Directory.EnumerateFiles(waiting))
        {
            File.Move(path, Path.Combine(station.Drop, Path.GetFileName(path)));
        }

        var all = files * (round + 1);
        var committed = await station.UntilAsync("select count(*) from source_file", all);
        var putAway = committed + await station.UntilAsync("select count(*) from arrival where put_away = 1", all);

        // The next round begins when this one is evaluated and told too.
        await station.UntilIdleAsync();
        return (committed, putAway);
    }

    private static void Print(int files, List<double> ours, List<double> settled, List<double> theirs)
    {
        var (station, putAway, python) = (Figures.Median(ours), Figures.Median(settled), Figures.Median(theirs));
        Figures.Print($"{files} files x {RowsPerFile} rows, medians of {ours.Count} interleaved rounds after the first");
        Figures.Print($"station, committed  {station,6:0.00} s {files / station,6:0} files/s   {python / station:0.00} x Python");
        Figures.Print($"station, put away   {putAway,6:0.00} s {files / putAway,6:0} files/s");
        Figures.Print($"Python, each commit {python,6:0.00} s {files / python,6:0} files/s");
        Figures.PrintLoad();
    }
}
