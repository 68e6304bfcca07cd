using System.Globalization;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace LabPipeline.Reporting.Figures;

/// <summary>Ticks at values people say, on plain and logarithmic axes.</summary>
internal static class AxisTicks
{
    private static readonly double[] Steps = [1, 2, 5];

    /// <summary>The axis holds log10 of the values; ticks stand at 1, 2 and 5 of each decade and say the value itself.</summary>
    public static void Logarithmic(IAxis axis, double low, double high)
    {
        var ticks = new NumericManual();
        for (var decade = (int)Math.Floor(Math.Log10(low)) - 1; decade <= Math.Ceiling(Math.Log10(high)); decade++)
        {
            foreach (var value in Steps.Select(step => step * Math.Pow(10, decade)))
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
