using System.Globalization;

namespace LabPipeline.Benchmarks;

/// <summary>How benchmarks print: medians of rounds, and the load of the machine beside them.</summary>
internal static class Figures
{
    private const double Mebibyte = 1048576;

    /// <summary>The middle value; of an even number of rounds the upper of the two.</summary>
    public static double Median(IReadOnlyList<double> values) => values.Count == 0 ? double.NaN : values.Order().ElementAt(values.Count / 2);

    public static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));

    /// <summary>Processes that want to run, over the last minute: on a busy machine only ratios of interleaved rounds can be compared.</summary>
    public static void PrintLoad() =>
        Print($"load average {(OperatingSystem.IsLinux() ? File.ReadAllText("/proc/loadavg").Split(' ')[0] : "unknown")}, {Environment.ProcessorCount} processors");

    public static double Mebibytes(long bytes) => bytes / Mebibyte;

    public static int Number(string[] args, int at, int otherwise) => args.Length > at ? int.Parse(args[at], CultureInfo.InvariantCulture) : otherwise;
}
