using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.Benchmarks;

/// <summary>People looking at the board of a large warehouse while files are loaded into it: how long pages take, and how much slower loading becomes.</summary>
/// <remarks>The people are another process than station and board. Rounds with and without people alternate, so that what else the machine does strikes both.</remarks>
internal sealed class BoardLoad(BoardStation station, int users, int rows)
{
    /// <summary>Name of the question whether something changed.</summary>
    public const string News = "(news)";

    private const int RowsPerFile = 50_000;
    private const int WarmingTimes = 40;
    private const double TargetMilliseconds = 200;
    private const double TargetSlowing = 0.10;

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan Settling = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Quiet = TimeSpan.FromSeconds(20);

    private int _files;

    public static async Task<int> RunAsync(string[] args)
    {
        var (millions, users, rounds, rows) = (Option(args, "--millions", 10), Option(args, "--users", 20), Option(args, "--rounds", 3), Option(args, "--rows", 1_000_000));
        await using var station = await BoardStation.StartAsync(millions * 1_000_000);
        return await new BoardLoad(station, users, rows).MeasureAsync(rounds);
    }

    private async Task<int> MeasureAsync(int rounds)
    {
        var people = new List<BoardUser>();
        for (var number = 1; number <= users; number++)
        {
            people.Add(await station.PersonAsync(number));
        }

        // The first requests also pay for the compilation of everything they run through, as does the first file.
        await people[0].VisitAsync(station.Pages, WarmingTimes, (_, _) => { });
        await WithPeopleAsync(people, new PageTimes(), () => LoadAsync(RowsPerFile * 2));
        var (quiet, busy, alone, beside) = (new PageTimes(), new PageTimes(), new List<double>(), new List<double>());
        await WithPeopleAsync(people, quiet, () => Task.Delay(Quiet));
        for (var round = 1; round <= rounds; round++)
        {
            await UntilIdleAsync();
            var before = station.ProcessorSeconds;
            alone.Add(await LoadAsync(rows));
            await UntilIdleAsync();
            var between = station.ProcessorSeconds;
            await WithPeopleAsync(people, busy, async () => beside.Add(await LoadAsync(rows)));
            Figures.Print($"round {round}: {alone[^1]:N0} rows/s without people, {beside[^1]:N0} rows/s with {users}; station's processor {between - before:0.0} s and {station.ProcessorSeconds - between:0.0} s");
        }

        people.ForEach(person => person.Dispose());
        quiet.Print($"{users} people, nothing loaded");
        var p95 = busy.Print($"{users} people while files are loaded");
        var slowing = 1 - (Figures.Median(beside) / Figures.Median(alone));
        Figures.Print($"median {Figures.Median(alone):N0} rows/s without, {Figures.Median(beside):N0} rows/s with people: slower by {slowing:P1}; targets: p95 {TargetMilliseconds:0} ms, {TargetSlowing:P0}");
        Figures.PrintLoad();
        return p95 <= TargetMilliseconds && slowing <= TargetSlowing ? 0 : 1;
    }

    private async Task WithPeopleAsync(IEnumerable<BoardUser> people, PageTimes times, Func<Task> meanwhile)
    {
        using var stop = new CancellationTokenSource();
        var looking = people.Select(person => Task.Run(() => person.LookAsync(station.Pages, times.Note, stop.Token))).ToList();
        await meanwhile();
        await stop.CancelAsync();
        await Task.WhenAll(looking);
    }

    /// <summary>Drops files of <paramref name="total"/> rows together, all at once, and waits until the last one is committed.</summary>
    /// <returns>Rows a second.</returns>
    private async Task<double> LoadAsync(int total)
    {
        var staging = Directory.CreateDirectory(Path.Combine(station.Folder, "staging")).FullName;
        var names = Enumerable.Range(_files + 1, total / RowsPerFile).Select(number => FormattableString.Invariant($"bulk-{number}.csv")).ToList();
        foreach (var name in names)
        {
            SugarFile.Write(Path.Combine(staging, name), RowsPerFile, ++_files);
        }

        var watch = Stopwatch.StartNew();
        foreach (var name in names)
        {
            File.Move(Path.Combine(staging, name), Path.Combine(station.Folder, "drop", "sugar", name));
        }

        while (station.Count("select coalesce(sum(new_count), 0) from source_file where name like 'bulk-%'") < (long)_files * RowsPerFile)
        {
            await Task.Delay(LookEvery);
        }

        return total / watch.Elapsed.TotalSeconds;
    }

    /// <summary>Files of the round before are still being judged when the last of them is stored; the next round shall not pay for that.</summary>
    private async Task UntilIdleAsync()
    {
        var (last, since) = (-1L, Stopwatch.StartNew());
        while (since.Elapsed < Settling || station.Count("select count(*) from outbox where published_at is null") > 0)
        {
            await Task.Delay(LookEvery);
            if (station.Count("select count(*) from inbox") is var handled && handled != last)
            {
                last = handled;
                since.Restart();
            }
        }
    }

    private static int Option(string[] args, string name, int otherwise)
    {
        var at = Array.IndexOf(args, name);
        return at >= 0 && at + 1 < args.Length ? int.Parse(args[at + 1], CultureInfo.InvariantCulture) : otherwise;
    }
}
