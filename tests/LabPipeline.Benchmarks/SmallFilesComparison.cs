namespace LabPipeline.Benchmarks;

/// <summary>Many small files that wait at once, until all are committed, against one Python process that commits each.</summary>
internal static class SmallFilesComparison
{
    private const int RowsPerFile = 50;
    private const string Ours = "station";
    private const string PutAway = "station, put away";
    private const string PythonName = "Python, each commit";

    // No sample is in two files: evaluation would read all earlier readings of a sample again with each.
    private const int SamplesPerFile = 2;

    public static async Task<IReadOnlyList<Goal>> RunAsync(string[] args)
    {
        var (files, rounds) = (Figures.Number(args, 0, 1000), Figures.Number(args, 1, 5));
        var times = new Rounds();
        var folder = Directory.CreateTempSubdirectory("labpipeline-small-").FullName;
        try
        {
            await CalmDisk.WaitAsync(folder);
            await using var station = await StationProcess.StartAsync(Path.Combine(folder, "data"), SugarFile.Profile);
            for (var round = 0; round <= rounds; round++)
            {
                // Nothing is deleted before the end: making files would become what is timed.
                var waiting = Directory.CreateDirectory(Path.Combine(folder, FormattableString.Invariant($"{round}"))).FullName;
                for (var file = 0; file < files; file++)
                {
                    var number = (round * files) + file;
                    SugarFile.Write(Path.Combine(waiting, FormattableString.Invariant($"{number:00000}.csv")), RowsPerFile, number, number * SamplesPerFile);
                }

                var theirs = await OtherSide.PythonFolderAsync(Path.Combine(folder, FormattableString.Invariant($"{round}.db")), waiting);
                var (committed, putAway) = await StationAsync(station, waiting, files, round);
                if (round == 0)
                {
                    Figures.Print($"station just started {committed:0.00} s, Python {theirs:0.00} s: {theirs / committed:0.00} x Python; not counted");
                    continue;
                }

                times.Add(PythonName, theirs);
                times.Add(Ours, committed);
                times.Add(PutAway, putAway);
                times.PrintLast(round);
            }

            Figures.Print($"{files} files x {RowsPerFile} rows, medians of {rounds} interleaved rounds after the first");
            times.PrintTable(Ours, files, "files");
            return [new("small files that wait at once, rate against Python", times.Median(PythonName) / times.Median(Ours), 1)];
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
}
