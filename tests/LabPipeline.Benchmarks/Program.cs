using System.Globalization;
using LabPipeline.Benchmarks;

return args switch
{
    ["compare", .. var rest] => await ReportAsync(() => BulkComparison.RunAsync(Sized(1_000_000, rest)), () => BulkComparison.RunAgainAsync(Sized(1_000_000, rest)), () => SmallFilesComparison.RunAsync(Sized(1000, rest))),
    ["bulk", .. var rest] => await ReportAsync(() => BulkComparison.RunAsync(rest)),
    ["again", .. var rest] => await ReportAsync(() => BulkComparison.RunAgainAsync(rest)),
    ["small", .. var rest] => await ReportAsync(() => SmallFilesComparison.RunAsync(rest)),
    ["parse", .. var rest] => await ReportAsync(() => ParseComparison.RunAsync(rest)),
    ["growth", .. var rest] => await ReportAsync(() => GrowthTiming.RunAsync(rest)),
    ["memory", .. var rest] => await ReportAsync(() => MemoryTiming.RunAsync(rest)),
    ["startup", .. var rest] => await ReportAsync(() => StartupTiming.RunAsync(rest)),
    ["drain", .. var rest] => await ReportAsync(() => DrainComparison.RunAsync(rest)),
    ["micro", .. var rest] => MicroBenchmarks.Run(rest),
    ["analysis"] => AnalysisTiming.Run(),
    ["report", .. var rest] => await ReportTiming.RunAsync(rest),
    ["latency", .. var rest] => await LatencyTiming.RunAsync(rest),
    ["board", "--growth"] => await BoardGrowth.RunAsync(),
    ["board", .. var rest] => await BoardLoad.RunAsync(rest),
    _ => Usage(),
};

static string[] Sized(int size, string[] rounds) => [size.ToString(CultureInfo.InvariantCulture), .. rounds];

static async Task<int> ReportAsync(params IEnumerable<Func<Task<IReadOnlyList<Goal>>>> benchmarks)
{
    var goals = new List<Goal>();
    foreach (var benchmark in benchmarks)
    {
        goals.AddRange(await benchmark());
    }

    return Goal.Report(goals);
}

static int Usage()
{
    Console.Error.WriteLine(
        """
        Usage: compare [rounds]         the next three, one after another, with one table of goals at the end; exit code 1 when one is missed by more than its slack
               bulk [rows] [rounds]     one sugar file of 8 columns, drop to committed: station against sqlite3 .import, Python and R, interleaved
               again [rows] [rounds]    the same content again: station against Python
               small [files] [rounds]   files of 50 rows that wait at once: station against one Python process
               parse [rows] [rounds]    strict typed reading of a file: ours against CsvHelper and Python
               growth [readings]        one more file, and one sample's trail, by what the warehouse holds (10,000,000)
               memory [rows]            peak memory from 1,000,000 to 20,000,000 rows
               startup [rounds]         process start to ready, and to the first file taken
               drain [messages] [rounds]  outbox drained to a private RabbitMQ node against plain publishing
               micro [filter]           parser, hash, evaluation, analysis of variance, colour
               analysis                 all tables of 4 clones x 3 rates x 4 blocks x 8 pulls, warm median of 20
               latency [--seconds 120] [--rate 10]   small files at a steady rate: drop to readings in the warehouse, drop to alert mail
               report [--growth] [--split-plot]   season report of 192 plots x 8 pulls, 5 processes; with --growth also 48 and 768 plots
               board --growth           pages for one person at 10,000, 1,000,000 and 10,000,000 readings
               board [--millions 10] [--users 20] [--rounds 3] [--rows 1000000]   people on the board of a large warehouse, with and without files being loaded
        """);
    return 2;
}
