using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Reporting.Season;

/// <summary>Turns adjusted means into printed tables with letters.</summary>
internal static class MeansTables
{
    /// <summary>Level of every test and interval of the report.</summary>
    public const double Alpha = 0.05;

    private const double Alike = 1e-9;

    public static MeansTable Of(AdjustedMeans means, Response response, ResponseScale scale)
    {
        var lost = means.Cells.FirstOrDefault(cell => cell.NotEstimable is not null)?.NotEstimable;
        try
        {
            var compared = means.ForComparison();
            var (precision, letters) = Compare(compared, response);
            return new MeansTable(means.Term.Name, [.. means.Cells.Select(cell => Row(cell, response, scale, letters))], precision, lost);
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            var none = new Dictionary<string, string>();
            return new MeansTable(means.Term.Name, [.. means.Cells.Select(cell => Row(cell, response, scale, none))], null, lost ?? Reason(fault));
        }
    }

    public static string Reason(Exception fault) => fault is NotEstimableException known ? known.Why : fault.Message.Split(" (Parameter")[0].TrimEnd('.');

    private static MeanRow Row(AdjustedMean cell, Response response, ResponseScale scale, Dictionary<string, string> letters) => new(
        cell.Label, cell.Count, cell.Value, cell.Value is null ? null : scale.Back(cell) * response.Divisor, letters.GetValueOrDefault(cell.Label, ""));

    /// <summary>Letters by the critical difference of each pair; the p value of each would take a double integral and is printed nowhere.</summary>
    private static (MeansPrecision Precision, Dictionary<string, string> Letters) Compare(ComparedMeans compared, Response response)
    {
        var critical = new Dictionary<double, double>();
        var (smallest, largest, df) = (double.MaxValue, 0.0, 0.0);
        for (var i = 0; i < compared.Count; i++)
        {
            for (var j = i + 1; j < compared.Count; j++)
            {
                var pair = compared.Precision(i, j);
                smallest = Math.Min(smallest, pair.Sed);
                // Pairs alike differ in the last digits; of those the fewest degrees of freedom, so that rounding decides nothing.
                (largest, df) = pair.Sed > (1 + Alike) * largest ? (pair.Sed, pair.Df)
                    : pair.Sed >= (1 - Alike) * largest ? (Math.Max(largest, pair.Sed), Math.Min(df, pair.Df))
                    : (largest, df);
            }
        }

        bool Differ(int i, int j)
        {
            var pair = compared.Precision(i, j);
            return Math.Abs(compared.Difference(i, j)) >= Critical(pair.Df) * pair.Sed;
        }

        double Critical(double degrees)
        {
            var rounded = Math.Round(degrees, 6);
            if (!critical.TryGetValue(rounded, out var value))
            {
                critical[rounded] = value = StudentizedRange.UpperQuantile(Alpha, compared.Count, rounded) / Math.Sqrt(2);
            }

            return value;
        }

        var order = response.LowIsBest ? LetterOrder.LowestFirst : LetterOrder.HighestFirst;
        var letters = CompactLetters.Of([.. compared.Means.Select(mean => mean.Mean)], Differ, order);
        return (new MeansPrecision(smallest, largest, df, CriticalDifference.Lsd(largest, df, Alpha), Critical(df) * largest),
            compared.Means.Zip(letters).ToDictionary(pair => pair.First.Label, pair => pair.Second));
    }
}
