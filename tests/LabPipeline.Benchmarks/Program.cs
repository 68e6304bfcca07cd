using LabPipeline.Benchmarks;

return args switch
{
    ["bulk", .. var rest] => await BulkComparison.RunAsync(rest),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine("Usage: bulk [rows] [rounds]   one sugar file of 8 columns: station against sqlite3 .import, interleaved");
    return 2;
}
