using LabPipeline.Benchmarks;

return args switch
{
    ["bulk", .. var rest] => await BulkComparison.RunAsync(rest),
    ["analysis"] => AnalysisTiming.Run(),
    ["report", .. var rest] => await ReportTiming.RunAsync(rest),
    ["latency", .. var rest] => await LatencyTiming.RunAsync(rest),
    ["board", .. var rest] => await BoardLoad.RunAsync(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Usage: bulk [rows] [rounds]   one sugar file of 8 columns: station against sqlite3 .import, interleaved");
    Console.Error.WriteLine("       analysis               all tables of 4 clones x 3 rates x 4 blocks x 8 pulls, warm median of 20");
    Console.Error.WriteLine("       report [--growth] [--split-plot]   season report of 192 plots x 8 pulls, 5 processes; with --growth also 48 and 768 plots");
    Console.Error.WriteLine("       latency [--seconds 120] [--rate 10]   small files at a steady rate: drop to readings in the warehouse, drop to alert mail");
    Console.Error.WriteLine("       board [--millions 10] [--users 20] [--rounds 3] [--rows 1000000]   people on the board of a large warehouse, with and without files being loaded");
    return 2;
}
