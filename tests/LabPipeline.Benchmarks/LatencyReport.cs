using System.Globalization;

namespace LabPipeline.Benchmarks;

/// <summary>What a run measured, against the targets.</summary>
internal sealed record LatencyReport
{
    private const double QueryableMedian = 0.5;
    private const double QueryableMost = 3;
    private const double ToldMost = 5;

    public required int Files { get; init; }

    public required double Seconds { get; init; }

    public required double ProcessorSeconds { get; init; }

    /// <summary>Seconds from drop to readings, rising.</summary>
    public required IReadOnlyList<double> Queryable { get; init; }

    /// <summary>Seconds from drop to mail, rising.</summary>
    public required IReadOnlyList<double> Told { get; init; }

    /// <returns>0 when everything arrived within the targets.</returns>
    public int Print((long Stored, long Alerts) counts)
    {
        Print($"{Files} files in {Seconds:0.0} s ({Files / Seconds:0.0} files/s), {counts.Stored} stored, {counts.Alerts} alerts, mails for {Told.Count} files; processor {ProcessorSeconds:0.0} s");
        Print($"drop to queryable: p50 {At(Queryable, 0.5):0.000} s, p99 {At(Queryable, 0.99):0.000} s, max {At(Queryable, 1):0.000} s; targets p50 {QueryableMedian:0.0} s, p99 {QueryableMost:0.0} s");
        Print($"drop to mail:      p50 {At(Told, 0.5):0.000} s, p99 {At(Told, 0.99):0.000} s, max {At(Told, 1):0.000} s; target p99 {ToldMost:0.0} s");
        var arrived = counts.Stored == Files && counts.Alerts == Files && Queryable.Count == Files && Told.Count == Files;
        var met = arrived && At(Queryable, 0.5) <= QueryableMedian && At(Queryable, 0.99) <= QueryableMost && At(Told, 0.99) <= ToldMost;
        Console.WriteLine(met ? "targets met" : arrived ? "a target was missed" : "something did not arrive, or arrived more than once");
        return met ? 0 : 1;
    }

    /// <summary>Nearest rank: the smallest value that the share <paramref name="part"/> of all does not exceed.</summary>
    private static double At(IReadOnlyList<double> rising, double part) =>
        rising.Count == 0 ? double.NaN : rising[(int)Math.Ceiling(part * rising.Count) - 1];

    private static void Print(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
