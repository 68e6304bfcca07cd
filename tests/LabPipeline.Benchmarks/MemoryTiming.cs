namespace LabPipeline.Benchmarks;

/// <summary>Peak memory of a station that takes one file, by the size of the file.</summary>
internal static class MemoryTiming
{
    private static readonly int[] Sizes = [1_000_000, 5_000_000, 20_000_000];

    public static async Task<IReadOnlyList<Goal>> RunAsync(string[] args)
    {
        var largest = 0.0;
        foreach (var rows in Sizes.Where(size => size <= Figures.Number(args, 0, Sizes[^1])))
        {
            var folder = Directory.CreateTempSubdirectory("labpipeline-memory-").FullName;
            try
            {
                var file = Path.Combine(folder, "bulk.csv");
                SugarFile.Write(file, rows, round: 1);
                await using var station = await StationProcess.StartAsync(Path.Combine(folder, "data"), SugarFile.Profile);
                File.Move(file, Path.Combine(station.Drop, "bulk.csv"));
                var seconds = await station.UntilAsync("select coalesce(max(new_count), 0) from source_file", rows);
                var peak = Figures.Mebibytes(station.PeakBytes);
                largest = Math.Max(largest, peak);
                Figures.Print($"{rows,12:N0} rows: peak {peak:0} MB, committed after {seconds:0.0} s");
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        return [new("peak memory in MB, largest of all sizes", largest, 150, AtMost: true, Slack: 0)];
    }
}
