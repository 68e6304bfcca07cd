using System.Globalization;
using LabPipeline.Reporting.Bench;

namespace LabPipeline.Reporting.Tests.Bench;

/// <summary>Pulls of an invented trial; odd plots lie in bay B2, even ones in bay B1.</summary>
internal static class BenchPulls
{
    public static BenchPull Of(int blocks, int plots) => new()
    {
        TrialCode = "NT26",
        PullNo = 1,
        DueOn = new DateOnly(2026, 10, 5),
        OpensOn = new DateOnly(2026, 10, 5),
        ClosesOn = new DateOnly(2026, 10, 9),
        HarvestedOn = new DateOnly(2026, 9, 16),
        TubersPerSample = 10,
        TimeZone = "America/Chicago",
        Samples =
        [
            .. from block in Enumerable.Range(1, blocks)
               from plot in Enumerable.Range(1, plots)
               select new PullSample
               {
                   Barcode = string.Create(CultureInfo.InvariantCulture, $"26NT01{block}{plot:00}X"),
                   PlotCode = string.Create(CultureInfo.InvariantCulture, $"{(block * 100) + plot}"),
                   Block = block.ToString(CultureInfo.InvariantCulture),
                   BayCode = plot % 2 == 0 ? "B1" : "B2",
                   CloneName = "KT-104",
                   Treatment = "none",
               },
        ],
    };
}
