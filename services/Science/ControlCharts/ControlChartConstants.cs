using LabPipeline.Science.Statistics.Distributions;
using Require = LabPipeline.Science.Units.Require;

namespace LabPipeline.Science.ControlCharts;

/// <summary>Factors of Shewhart charts for subgroups of n results, for normal data and limits at three standard errors.</summary>
/// <remarks>
/// d2 and d3 are mean and standard deviation of the range of n standard normals, integrated from its tail; c4 = sqrt(2/(n-1)) Γ(n/2)/Γ((n-1)/2).
/// Lower factors below zero are zero. Notation of ISO 7870-2 and ASTM E2587. Older tables print D4(3) as 2.574; 2.575 is right.
/// </remarks>
public sealed class ControlChartConstants
{
    /// <summary>Largest subgroup supported; beyond about 10 the range wastes information and the s chart is better.</summary>
    public const int LargestSubgroup = 25;

    // The range of 25 normals exceeds 14 one time in 1e20.
    private const double WidestRange = 14;
    private const int Panels = 700;

    private static readonly Lazy<ControlChartConstants>[] Known =
        [.. Enumerable.Range(0, LargestSubgroup + 1).Select(size => new Lazy<ControlChartConstants>(() => new ControlChartConstants(size)))];

    private ControlChartConstants(int size)
    {
        Size = size;
        (D2Mean, D3Deviation) = RangeMoments(size);
        C4 = Math.Sqrt(2.0 / (size - 1)) * Math.Exp(SpecialFunctions.LogGamma(size / 2.0) - SpecialFunctions.LogGamma((size - 1) / 2.0));
    }

    /// <summary>Subgroup size n.</summary>
    public int Size { get; }

    /// <summary>d2: mean range / sigma.</summary>
    public double D2Mean { get; }

    /// <summary>d3: standard deviation of the range / sigma.</summary>
    public double D3Deviation { get; }

    /// <summary>c4: mean s / sigma.</summary>
    public double C4 { get; }

    /// <summary>A: mean chart, sigma known.</summary>
    public double A => 3 / Math.Sqrt(Size);

    /// <summary>A2: mean chart from the mean range.</summary>
    public double A2 => A / D2Mean;

    /// <summary>A3: mean chart from the mean s.</summary>
    public double A3 => A / C4;

    /// <summary>B3: lower limit of the s chart from the mean s.</summary>
    public double B3 => Math.Max(0, 1 - (3 * SpreadOfS / C4));

    /// <summary>B4: upper limit of the s chart from the mean s.</summary>
    public double B4 => 1 + (3 * SpreadOfS / C4);

    /// <summary>B5: lower limit of the s chart, sigma known.</summary>
    public double B5 => Math.Max(0, C4 - (3 * SpreadOfS));

    /// <summary>B6: upper limit of the s chart, sigma known.</summary>
    public double B6 => C4 + (3 * SpreadOfS);

    /// <summary>D1: lower limit of the range chart, sigma known.</summary>
    public double D1 => Math.Max(0, D2Mean - (3 * D3Deviation));

    /// <summary>D2: upper limit of the range chart, sigma known.</summary>
    public double D2 => D2Mean + (3 * D3Deviation);

    /// <summary>D3: lower limit of the range chart from the mean range.</summary>
    public double D3 => D1 / D2Mean;

    /// <summary>D4: upper limit of the range chart from the mean range.</summary>
    public double D4 => D2 / D2Mean;

    private double SpreadOfS => Math.Sqrt(1 - (C4 * C4));

    /// <summary>Factors for subgroups of <paramref name="size"/>.</summary>
    /// <param name="size">2 to 25.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside 2 to 25.</exception>
    public static ControlChartConstants For(int size) => Known[Require.Between(size, 2, LargestSubgroup, "a subgroup size")].Value;

    // E(W) is the integral of P(W > w), E(W²) that of 2 w P(W > w); Simpson's rule.
    private static (double Mean, double Deviation) RangeMoments(int size)
    {
        var range = new NormalRange(size);
        const double Step = WidestRange / Panels;
        var (mean, square) = (0.0, 0.0);
        for (var node = 0; node <= Panels; node++)
        {
            var weight = node is 0 or Panels ? 1 : node % 2 == 1 ? 4 : 2;
            var tail = weight * (node == 0 ? 1 : range.Upper(node * Step));
            mean += tail;
            square += 2 * node * Step * tail;
        }

        (mean, square) = (mean * Step / 3, square * Step / 3);
        return (mean, Math.Sqrt(square - (mean * mean)));
    }
}
