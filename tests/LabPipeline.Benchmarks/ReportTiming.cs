using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.Benchmarks;

/// <summary>The season report of 192 plots x 8 pulls in processes of its own, and how time and memory grow with the trial.</summary>
internal static class ReportTiming
{
    private const int MostRuns = 5;
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(10);

    private const int TargetPlots = 192;
    private const double TargetSeconds = 5;
    private const long TargetBytes = 300L << 20;

    private static readonly int[] Growth = [ReportPlan.SmallestPlots, 4 * ReportPlan.SmallestPlots, 16 * ReportPlan.SmallestPlots];

    public static async Task<int> RunAsync(string[] args)
    {
        var program = await PublishedStation.PathAsync();
        var splitPlot = args.Contains("--split-plot");
        int[] sizes = args.Contains("--growth") ? Growth : [TargetPlots];
        var met = true;
        foreach (var plots in sizes)
        {
            var folder = Directory.CreateTempSubdirectory("labpipeline-report-").FullName;
            try
            {
                await new ReportSeason(ReportPlan.Of(plots, splitPlot)).WriteAsync(folder);
                met &= Measure(program, folder, plots);
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }

        return met ? 0 : 1;
    }

    private static bool Measure(string program, string folder, int plots)
    {
        // The largest takes minutes.
        var count = plots > TargetPlots ? 1 : MostRuns;
        List<(double Wall, double Processor, long Peak)> runs = [.. Enumerable.Range(0, count).Select(_ => Once(program, folder))];
        var (wall, processor, peak) = (Figures.Median([.. runs.Select(run => run.Wall)]), Figures.Median([.. runs.Select(run => run.Processor)]), (long)Figures.Median([.. runs.Select(run => (double)run.Peak)]));
        var bytes = new FileInfo(Page(folder)).Length;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{plots} plots x {ReportPlan.PullDays.Count} pulls: wall {wall:0.00} s, processor {processor:0.00} s, peak memory {peak / 1048576.0:0} MB, page {bytes / 1048576.0:0.0} MB; medians of {count} processes"));
        if (plots != TargetPlots)
        {
            return true;
        }

        var met = wall <= TargetSeconds && peak <= TargetBytes;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"target {TargetSeconds:0} s and {TargetBytes >> 20} MB: {(met ? "met" : "missed")}"));
        return met;
    }

    private static (double Wall, double Processor, long Peak) Once(string program, string folder)
    {
        var start = new ProcessStartInfo("dotnet",
            [program, "season", "report", ReportPlan.TrialCode, "--data", folder, "--out", Page(folder)])
        { RedirectStandardOutput = true };
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var printed = process.StandardOutput.ReadToEndAsync();
        var (processor, peak) = (0.0, 0L);
        while (!process.WaitForExit(LookEvery))
        {
            (processor, peak) = Look(process, (processor, peak));
        }

        var wall = watch.Elapsed.TotalSeconds;
        return process.ExitCode == 0
            ? (wall, processor, peak)
            : throw new InvalidOperationException($"The report ended with {process.ExitCode}: {printed.GetAwaiter().GetResult()}");
    }

    /// <summary>What is left of a process that has ended tells neither; the last look is short of the end by the pause at most.</summary>
    private static (double Processor, long Peak) Look(Process process, (double Processor, long Peak) before)
    {
        try
        {
            process.Refresh();
            return (process.TotalProcessorTime.TotalSeconds, Math.Max(before.Peak, process.PeakWorkingSet64));
        }
        catch (Exception exception) when (exception is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            // It ended between the wait and the look.
            return before;
        }
    }

    private static string Page(string folder) => Path.Combine(folder, "report.html");
}
