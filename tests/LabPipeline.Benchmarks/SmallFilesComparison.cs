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
            for (var round = 1; round <= rounds; round++)
            {
                // Nothing is deleted before the end: ext4 passes over places freed a moment ago one by one, so that making files would be what is timed.
                var place = Path.Combine(folder, FormattableString.Invariant($"{round}"));
                var waiting = Directory.CreateDirectory(Path.Combine(place, "waiting")).FullName;
                for (var file = 0; file < files; file++)
                {
                    SugarFile.Write(Path.Combine(waiting, FormattableString.Invariant($"{file:0000}.csv")), RowsPerFile, (round * files) + file, file * SamplesPerFile);
                }

                theirs.Add(await OtherSide.PythonFolderAsync(Path.Combine(place, "other.db"), waiting));
                var (committed, putAway) = await StationAsync(Path.Combine(place, "data"), waiting, files);
                ours.Add(committed);
                settled.Add(putAway);
                Figures.Print($"round {round}: station {committed:0.00} s (put away {putAway:0.00} s), Python {theirs[^1]:0.00} s");
            }

            var (station, python) = (Figures.Median(ours), Figures.Median(theirs));
            Figures.Print($"{files} files x {RowsPerFile} rows, medians of {rounds} interleaved rounds");
            Figures.Print($"station, committed  {station,6:0.00} s {files / station,6:0} files/s   {python / station:0.00} x Python");
            Figures.Print($"station, put away   {Figures.Median(settled),6:0.00} s {files / Figures.Median(settled),6:0} files/s");
            Figures.Print($"Python, each commit {python,6:0.00} s {files / python,6:0} files/s");
            Figures.PrintLoad();
            return 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The clock starts when the last file has been renamed in; the first ones may be on their way by then, a few milliseconds.</summary>
    private static async Task<(double Committed, double PutAway)> StationAsync(string data, string waiting, int files)
    {
        await using var station = await StationProcess.StartAsync(data, SugarFile.Profile);
        foreach (var path in Directory.EnumerateFiles(waiting))
        {
            File.Move(path, Path.Combine(station.Drop, Path.GetFileName(path)));
        }

        var committed = await station.UntilAsync("select count(*) from source_file", files);
        return (committed, committed + await station.UntilAsync("select count(*) from arrival where put_away = 1", files));
    }
}
