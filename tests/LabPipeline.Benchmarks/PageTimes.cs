using System.Collections.Concurrent;
using System.Globalization;

namespace LabPipeline.Benchmarks;

/// <summary>How long pages took, by name.</summary>
internal sealed class PageTimes
{
    private readonly ConcurrentDictionary<string, ConcurrentBag<double>> _byPage = new(StringComparer.Ordinal);

    public void Note(string page, double milliseconds) => _byPage.GetOrAdd(page, _ => []).Add(milliseconds);

    /// <summary>A line each page, and one for all pages together, the question for news left out.</summary>
    /// <returns>The 95th percentile of all pages.</returns>
    public double Print(FormattableString title)
    {
        Write($"{title.ToString(CultureInfo.InvariantCulture)}: requests, p50, p95, p99, most in ms");
        foreach (var (page, times) in _byPage.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            Line(page, [.. times.Order()]);
        }

        List<double> all = [.. _byPage.Where(pair => pair.Key != BoardLoad.News).SelectMany(pair => pair.Value).Order()];
        Line("all pages", all);
        return At(all, 0.95);
    }

    private static void Line(string name, List<double> rising) =>
        Write($"  {name,-22} {rising.Count,6} {At(rising, 0.5),7:0.0} {At(rising, 0.95),7:0.0} {At(rising, 0.99),7:0.0} {At(rising, 1),7:0.0}");

    /// <summary>Nearest rank: the smallest value that the share <paramref name="part"/> of all does not exceed.</summary>
    private static double At(List<double> rising, double part) => rising.Count == 0 ? double.NaN : rising[Math.Max(0, (int)Math.Ceiling(part * rising.Count) - 1)];

    private static void Write(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
