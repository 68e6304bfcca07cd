namespace LabPipeline.Benchmarks;

/// <summary>From the start of the process to the first look at every drop folder, and to the first file that waited.</summary>
internal static class StartupTiming
{
    private const int Rows = 50;

    public static async Task<IReadOnlyList<Goal>> RunAsync(string[] args)
    {
        var rounds = Figures.Number(args, 0, 9);
        var (ready, first) = (new List<double>(), new List<double>());
        var folder = Directory.CreateTempSubdirectory("labpipeline-startup-").FullName;
        try
        {
            // The first start also makes the warehouse, which happens once.
            for (var round = 0; round <= rounds; round++)
            {
                var drop = Directory.CreateDirectory(Path.Combine(folder, "drop", "sugar")).FullName;
                SugarFile.Write(Path.Combine(drop, $"{round}.csv"), Rows, round);
                await using var station = await StationProcess.StartAsync(folder, SugarFile.Profile);
                var taken = station.ReadyAfter.TotalSeconds + await station.UntilAsync("select count(*) from source_file", round + 1);
                Figures.Print($"start {round}: ready after {station.ReadyAfter.TotalSeconds:0.00} s, first file taken after at most {taken:0.00} s{(round == 0 ? " (new warehouse)" : "")}");
                if (round > 0)
                {
                    ready.Add(station.ReadyAfter.TotalSeconds);
                    first.Add(taken);
                }
            }

            Figures.Print($"medians of {rounds} starts: ready {Figures.Median(ready):0.00} s, first file taken {Figures.Median(first):0.00} s");
            return [new("station ready, in s after its start", Figures.Median(ready), 2, AtMost: true)];
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
