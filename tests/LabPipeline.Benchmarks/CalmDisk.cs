using System.Diagnostics;

namespace LabPipeline.Benchmarks;

/// <summary>Waits until making a file costs what it costs where nobody deletes.</summary>
/// <remarks>
/// ext4 without a journal gives the place of a deleted file to no other for some minutes, and passes over all such places one by one whenever a file is made: after a
/// test run that is ten times the usual cost. Instruments and stations delete nothing.
/// </remarks>
internal static class CalmDisk
{
    private const int Probes = 50;
    private const double CalmMicroseconds = 50;

    private static readonly TimeSpan LookEvery = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(8);

    public static async Task WaitAsync(string folder)
    {
        var watch = Stopwatch.StartNew();
        var probes = Directory.CreateDirectory(Path.Combine(folder, "probes")).FullName;
        var cost = ProbeCost(probes, 0);
        for (var round = 1; cost > CalmMicroseconds && watch.Elapsed < LongestWait; round++)
        {
            if (round == 1)
            {
                Figures.Print($"making a file takes {cost:0} µs here, as after many deletions; waiting for less than {CalmMicroseconds:0}");
            }

            await Task.Delay(LookEvery);
            cost = ProbeCost(probes, round);
        }

        Figures.Print($"making a file takes {cost:0} µs here{(cost > CalmMicroseconds ? ", still: only the side that makes files pays for that" : "")}");
    }

    private static double ProbeCost(string folder, int round)
    {
        var times = new List<double>();
        for (var probe = 0; probe < Probes; probe++)
        {
            var started = Stopwatch.GetTimestamp();
            File.Create(Path.Combine(folder, FormattableString.Invariant($"{round}-{probe}"))).Dispose();
            times.Add(Stopwatch.GetElapsedTime(started).TotalMicroseconds);
        }

        return Figures.Median(times);
    }
}
