using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace LabPipeline.Reporting.Figures;

/// <summary>Ticks at values people say, on plain and logarithmic axes.</summary>
internal static class AxisTicks
{
    private static readonly double[] Coarse = [1, 2, 5];
    private static readonly double[] Fine = [1, 1.5, 2, 3, 4, 5, 7];

    /// <summary>The axis holds log10 of the values; ticks stand at round values and say the value itself.</summary>
    public static void Logarithmic(IAxis axis, double low, double high)
    {
        var ticks = new NumericManual();
        var steps = high < 8 * low ? Fine : Coarse;
        for (var decade = (int)Math.Floor(Math.Log10(low)) - 1; decade <= Math.Ceiling(Math.Log10(high)); decade++)
        {
            foreach (var value in steps.Select(step => step * Math.Pow(10, decade)))
            {
                ticks.AddMajor(Math.Log10(value), value.ToString("0.####", CultureInfo.InvariantCulture));
            }
        }

        axis.TickGenerator = ticks;
    }

    public static void Named(IAxis axis, IEnumerable<(double At, string Name)> names)
    {
        var ticks = new NumericManual();
        foreach (var (at, name) in names)
        {
            ticks.AddMajor(at, name);
        }

        axis.TickGenerator = ticks;
    }
}
