using LabPipeline.Benchmarks;

return args switch
{
    ["bulk", .. var rest] => await BulkComparison.RunAsync(rest),
    ["analysis"] => AnalysisTiming.Run(),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Usage: bulk [rows] [rounds]   one sugar file of 8 columns: station against sqlite3 .import, interleaved");
    Console.Error.WriteLine("       analysis               all tables of 4 clones x 3 rates x 4 blocks x 8 pulls, warm median of 20");
    return 2;
}
