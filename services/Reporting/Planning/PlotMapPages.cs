using System.Globalization;
using LabPipeline.Reporting.Printing;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>Draws a plot map. Everything is told by text; the greys only help the eye and stay light enough to read on.</summary>
internal sealed class PlotMapPages(PlotMap map, TextWidths widths)
{
    private const double Margin = 12;
    private const double Header = 20;
    private const double BlockGap = 7;
    private const double Padding = 1.2;
    private const double CodeSize = 3.6;
    private const double LargestText = 2.8;
    private const double SmallestText = 1.5;
    private const double LineHeight = 1.25;
    private const double TallestCell = 22;
    private const double DarkestInk = 0.28;
    private const int MostShades = 4;

    private double CellWidth => (Page.A4Long - (2 * Margin)) / map.Columns;

    private double CellHeight => Math.Min(TallestCell, (2 * Padding) + CodeSize + (TextSize * LineHeight * map.Plan.Design.Factors.Count) + 1.5);

    /// <summary>The largest size at which every level fits its cell.</summary>
    private double TextSize => Math.Min(LargestText, (CellWidth - (2 * Padding)) / WidestUnit);

    private double WidestUnit => map.Cells.SelectMany(cell => LinesOf(cell.Plot)).Max(line => widths.Of(line, 1, bold: false));

    /// <summary>A4 pages, broken between blocks.</summary>
    /// <exception cref="PrintException">A level is too long for its cell.</exception>
    public IReadOnlyList<Page> Paged()
    {
        RequireReadable();
        var pages = new List<Page>();
        var marks = NewPage();
        var top = Margin + Header;
        foreach (var block in map.Plan.Design.Blocks)
        {
            if (top > Margin + Header && top + HeightOf(block) > Page.A4Short - Margin)
            {
                pages.Add(new Page(Page.A4Long, Page.A4Short, marks));
                marks = NewPage();
                top = Margin + Header;
            }

            marks.AddRange(Block(block, top));
            top += HeightOf(block) + BlockGap;
        }

        return [.. pages, new Page(Page.A4Long, Page.A4Short, marks)];
    }

    /// <summary>One picture as tall as it needs to be.</summary>
    /// <exception cref="PrintException">A level is too long for its cell.</exception>
    public Page Whole()
    {
        RequireReadable();
        var marks = NewPage();
        var top = Margin + Header;
        foreach (var block in map.Plan.Design.Blocks)
        {
            marks.AddRange(Block(block, top));
            top += HeightOf(block) + BlockGap;
        }

        return new Page(Page.A4Long, top - BlockGap + Margin, marks);
    }

    private List<Mark> NewPage()
    {
        var plan = map.Plan;
        var seed = plan.Design.Seed is { } number ? number.ToString(CultureInfo.InvariantCulture) : "not stated";
        return
        [
            new Mark.Words(Margin, Margin + 5, $"{plan.Code}: plot map", 5, Bold: true),
            new Mark.Words(Margin, Margin + 10, plan.Title, 3.2),
            new Mark.Words(
                Margin,
                Margin + 14.5,
                Text($"{DesignNames.Of(plan.Design.Kind)}, {plan.Design.Blocks.Count} blocks, {plan.Plots.Count} plots; {plan.Site}; seed {seed}; harvest {plan.HarvestedOn:yyyy-MM-dd}"),
                2.8),
        ];
    }

    private IEnumerable<Mark> Block(string block, double top)
    {
        var cells = map.Cells.Where(cell => cell.Plot.Block == block).ToList();
        var firstRow = cells.Min(cell => cell.Row);
        var bays = string.Join(", ", cells.Select(cell => cell.Plot.BayCode).Distinct());
        yield return new Mark.Words(Margin, top + 3.2, $"Block {block}, bay {bays}", 3.4, Bold: true);
        foreach (var mark in cells.SelectMany(cell => Cell(cell, top + 5 + ((cell.Row - firstRow) * CellHeight))))
        {
            yield return mark;
        }

        foreach (var mainPlot in cells.Where(cell => cell.Plot.MainPlot is not null).GroupBy(cell => (cell.Plot.MainPlot, cell.Row)))
        {
            var left = Margin + ((mainPlot.Min(cell => cell.Column) - 1) * CellWidth);
            yield return new Mark.Frame(left, top + 5 + ((mainPlot.Key.Row - firstRow) * CellHeight), mainPlot.Count() * CellWidth, CellHeight, 0.9);
        }
    }

    private IEnumerable<Mark> Cell(MapCell cell, double top)
    {
        var left = Margin + ((cell.Column - 1) * CellWidth);
        yield return new Mark.Fill(left, top, CellWidth, CellHeight, InkOf(cell.Plot));
        yield return new Mark.Frame(left, top, CellWidth, CellHeight, 0.25);
        yield return new Mark.Words(left + Padding, top + Padding + (CodeSize * 0.85), cell.Plot.Code, CodeSize, Bold: true);
        if (cell.Plot.MainPlot is { } mainPlot)
        {
            yield return new Mark.Words(left + CellWidth - Padding - widths.Of(mainPlot, 2.2, bold: false), top + Padding + 2, mainPlot, 2.2);
        }

        foreach (var (line, index) in LinesOf(cell.Plot).Select((line, index) => (line, index)))
        {
            yield return new Mark.Words(left + Padding, top + Padding + CodeSize + 1 + (TextSize * LineHeight * (index + 0.8)), line, TextSize);
        }
    }

    private IReadOnlyList<string> LinesOf(TrialPlot plot) =>
        [.. map.Plan.Design.Factors.Select(factor => factor.Unit is null && factor.Name == map.Plan.Design.CloneFactor ? plot.Levels[factor.Name] : factor.Describe(plot.Levels[factor.Name]))];

    private double InkOf(TrialPlot plot)
    {
        var design = map.Plan.Design;
        var shading = design.Factors.FirstOrDefault(factor => factor.Name == design.MainPlotFactor)
            ?? design.Factors.FirstOrDefault(factor => factor.Name != design.CloneFactor) ?? design.Factors[0];
        return shading.Levels.Count > MostShades ? 0 : DarkestInk * shading.Levels.ToList().IndexOf(plot.Levels[shading.Name]) / (shading.Levels.Count - 1);
    }

    private double HeightOf(string block)
    {
        var rows = map.Cells.Where(cell => cell.Plot.Block == block).Select(cell => cell.Row).Distinct().Count();
        return 5 + (rows * CellHeight);
    }

    private void RequireReadable()
    {
        if (TextSize < SmallestText)
        {
            var longest = map.Cells.SelectMany(cell => LinesOf(cell.Plot)).MaxBy(line => widths.Of(line, 1, bold: false));
            throw new PrintException(Text(
                $"Plot map of {map.Plan.Code}: found '{longest}', too long for one of {map.Columns} columns of {CellWidth:0.0} mm; expected text that fits at {SmallestText} mm. Use fewer columns (--columns) or shorter levels."));
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
