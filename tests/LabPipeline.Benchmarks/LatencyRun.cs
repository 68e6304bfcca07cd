using System.Diagnostics;

namespace LabPipeline.Benchmarks;

/// <summary>Drops files and notes when what became of them was seen.</summary>
internal sealed class LatencyRun(string folder, AlertMailbox mailbox)
{
    private readonly string _drop = Path.Combine(folder, "drop", "sugar");

    /// <summary>Drops a file for each barcode, each when its moment has come, however late the one before was.</summary>
    /// <returns>By barcode, when it was about to be renamed into the drop folder, whole.</returns>
    public async Task<Dictionary<string, long>> DropAsync(IReadOnlyList<string> barcodes, int rate)
    {
        var staging = Directory.CreateDirectory(Path.Combine(folder, "staging")).FullName;
        var dropped = new Dictionary<string, long>(StringComparer.Ordinal);
        var watch = Stopwatch.StartNew();
        foreach (var (index, barcode) in barcodes.Index())
        {
            var ahead = TimeSpan.FromSeconds((double)index / rate) - watch.Elapsed;
            await Task.Delay(ahead > TimeSpan.Zero ? ahead : TimeSpan.Zero);
            var written = Path.Combine(staging, barcode + ".csv");
            await File.WriteAllTextAsync(written, LatencyTrials.FileOf(barcode, DateTimeOffset.UtcNow));
            dropped[barcode] = Stopwatch.GetTimestamp();
            File.Move(written, Path.Combine(_drop, barcode + ".csv"));
        }

        return dropped;
    }

    /// <param name="barcodes">Samples to drop files for.</param>
    /// <param name="rate">Files a second.</param>
    /// <param name="settle">Waits until all mails are there.</param>
    public async Task<LatencyReport> MeasureAsync(IReadOnlyList<string> barcodes, int rate, Func<Task> settle)
    {
        var lookout = new ReadingLookout(Path.Combine(folder, "warehouse.db"));
        using var stop = new CancellationTokenSource();
        var watching = Task.Run(() => lookout.WatchAsync(stop.Token));
        var watch = Stopwatch.StartNew();
        var before = Environment.CpuUsage.TotalTime;
        var dropped = await DropAsync(barcodes, rate);
        var seconds = watch.Elapsed.TotalSeconds;
        await settle();
        await stop.CancelAsync();
        await watching;
        return new LatencyReport
        {
            Files = barcodes.Count,
            Seconds = seconds,
            ProcessorSeconds = (Environment.CpuUsage.TotalTime - before).TotalSeconds,
            Queryable = Waits(dropped, lookout.Seen),
            Told = Waits(dropped, FirstMails(barcodes)),
        };
    }

    private Dictionary<string, long> FirstMails(IReadOnlyList<string> barcodes)
    {
        var wanted = barcodes.ToHashSet(StringComparer.Ordinal);
        var first = new Dictionary<string, long>(StringComparer.Ordinal);
        foreach (var (subject, at) in mailbox.Mails)
        {
            foreach (var word in subject.Split(' ', ':').Where(wanted.Contains))
            {
                first.TryAdd(word, at);
            }
        }

        return first;
    }

    private static IReadOnlyList<double> Waits(Dictionary<string, long> dropped, IReadOnlyDictionary<string, long> reached) =>
    [
        .. dropped.Where(file => reached.ContainsKey(file.Key)).Select(file => Stopwatch.GetElapsedTime(file.Value, reached[file.Key]).TotalSeconds).Order(),
    ];
}
