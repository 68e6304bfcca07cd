using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Correlation;

namespace LabPipeline.Reporting.Season;

/// <summary>Colour against sugar at the level of plot means; chips of one plot are never counted as independent.</summary>
/// <param name="Pulls">One entry a pull.</param>
/// <param name="Season">Mean of each plot over its pulls.</param>
/// <param name="Points">Plot means: natural logarithm of glucose, Hunter L, pull.</param>
internal sealed record SugarColour(IReadOnlyList<SugarColourRow> Pulls, SugarColourRow Season, IReadOnlyList<(double Glucose, double L, int PullNo, string Clone)> Points)
{
    public static SugarColour Of(PlotMeans glucose, PlotMeans colour, string cloneFactor)
    {
        var lightness = colour.All.ToDictionary(cell => (cell.PullNo, cell.Plot.PlotCode), cell => cell.Value);
        var pairs = glucose.All.Where(cell => !cell.BelowLimit && cell.Value > 0 && lightness.ContainsKey((cell.PullNo, cell.Plot.PlotCode)))
            .Select(cell => (Cell: cell, Log: Math.Log(cell.Value), L: lightness[(cell.PullNo, cell.Plot.PlotCode)])).ToList();
        return new SugarColour(
            [.. pairs.GroupBy(pair => pair.Cell.PullNo).OrderBy(group => group.Key).Select(group => Row($"pull {group.Key}", [.. group.Select(pair => (pair.Log, pair.L))]))],
            Row("plot means over the season", [.. pairs.GroupBy(pair => pair.Cell.Plot.PlotCode).Select(group => (group.Average(pair => pair.Log), group.Average(pair => pair.L)))]),
            [.. pairs.Select(pair => (pair.Cell.Value, pair.L, pair.Cell.PullNo, pair.Cell.Plot.Levels[cloneFactor]))]);
    }

    private static SugarColourRow Row(string label, (double X, double Y)[] pairs)
    {
        try
        {
            double[] x = [.. pairs.Select(pair => pair.X)];
            double[] y = [.. pairs.Select(pair => pair.Y)];
            return new SugarColourRow(label, pairs.Length, PearsonCorrelation.Of(x, y, MeansTables.Alpha), SpearmanCorrelation.Of(x, y, MeansTables.Alpha), SimpleRegression.Of(x, y), null);
        }
        catch (Exception fault) when (fault is NotEstimableException or ArgumentException)
        {
            return new SugarColourRow(label, pairs.Length, null, null, null, MeansTables.Reason(fault));
        }
    }
}
