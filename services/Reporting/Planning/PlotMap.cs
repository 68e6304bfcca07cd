using System.Globalization;
using LabPipeline.Reporting.Exports;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>Where the plots of a plan lie: block below block, each in rows of so many columns, in the order of the document.</summary>
public sealed class PlotMap
{
    private const int UsualColumns = 12;
    private const int FewestColumns = 5;

    private PlotMap(TrialPlan plan, int columns, IReadOnlyList<MapCell> cells)
    {
        Plan = plan;
        Columns = columns;
        Cells = cells;
    }

    public TrialPlan Plan { get; }

    public int Columns { get; }

    /// <summary>In the order of the document.</summary>
    public IReadOnlyList<MapCell> Cells { get; }

    /// <param name="plan">The plan.</param>
    /// <param name="columns">Plots in a row of the field; null for a number that divides the block evenly where there is one up to twelve.</param>
    /// <param name="serpentine">Whether every second row is numbered backwards, as it is walked.</param>
    public static PlotMap Of(TrialPlan plan, int? columns = null, bool serpentine = false)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns ?? 1, 1);
        var blocks = plan.Design.Blocks.Select(block => plan.Plots.Where(plot => plot.Block == block).ToList()).ToList();
        var width = columns ?? ColumnsFor(blocks.Max(block => block.Count));
        var cells = new List<MapCell>();
        var top = 0;
        foreach (var block in blocks)
        {
            var firstRow = top;
            cells.AddRange(block.Select((plot, at) =>
            {
                var (row, column) = (firstRow + (at / width), at % width);
                return new MapCell(row + 1, 1 + (serpentine && row % 2 == 1 ? width - 1 - column : column), plot);
            }));
            top += (block.Count + width - 1) / width;
        }

        return new PlotMap(plan, width, cells);
    }

    /// <summary>One line a plot: where it lies, what it is, and what the layout was drawn with.</summary>
    public string ToCsv()
    {
        var factors = Plan.Design.Factors;
        var lines = new List<string>
        {
            Line(["row", "column", "plot", "block", "main_plot", "bay", .. factors.Select(factor => factor.Name), "seed"]),
        };
        lines.AddRange(Cells.Select(cell => Line(
        [
            cell.Row.ToString(CultureInfo.InvariantCulture),
            cell.Column.ToString(CultureInfo.InvariantCulture),
            cell.Plot.Code,
            cell.Plot.Block,
            cell.Plot.MainPlot ?? "",
            cell.Plot.BayCode,
            .. factors.Select(factor => cell.Plot.Levels[factor.Name]),
            Plan.Design.Seed?.ToString(CultureInfo.InvariantCulture) ?? "",
        ])));
        return string.Concat(lines);
    }

    private static string Line(IEnumerable<string> cells) => string.Join(',', cells.Select(cell => cell.Length == 0 ? "" : CsvCell.Of(cell))) + "\n";

    private static int ColumnsFor(int plots) => plots <= UsualColumns
        ? plots
        : Enumerable.Range(FewestColumns, UsualColumns - FewestColumns + 1).Reverse().FirstOrDefault(columns => plots % columns == 0, UsualColumns);
}
