using System.Globalization;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Reads the plots of a plan from a comma-separated file: plot, block, bay, main_plot for split-plots, and one column for each factor.</summary>
/// <remarks>No quoting: codes and levels do not hold commas or quotes, and a file that tries is told so instead of being guessed at.</remarks>
internal sealed class PlotsTable(string fileName, IReadOnlyList<TrialFactor> factors, List<PlanFault> faults)
{
    private const string Plot = "plot";
    private const string Block = "block";
    private const string Bay = "bay";
    private const string MainPlot = "main_plot";

    /// <summary>Column names that no factor may have.</summary>
    public static readonly IReadOnlyList<string> Reserved = [Plot, Block, Bay, MainPlot];

    private IEnumerable<string> FactorNames =>
        factors.Select(factor => factor.Name).Where(name => name.Length > 0).Distinct(StringComparer.Ordinal);

    public (IReadOnlyList<TrialPlot> Plots, IReadOnlyList<string> Paths) Read(string text)
    {
        var lines = text.TrimStart('\uFEFF').ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');
        var columns = lines[0].Split(',');
        if (!HasColumns(columns))
        {
            return ([], []);
        }

        var plots = new List<TrialPlot>();
        var paths = new List<string>();
        for (var index = 1; index < lines.Length; index++)
        {
            if (ReadLine(columns, lines[index], index + 1) is { } plot)
            {
                plots.Add(plot);
                paths.Add(PathOf(index + 1));
            }
        }

        if (lines.Length == 1)
        {
            Note(1, "a header and nothing else", "one line for each plot", "Add the plots.");
        }

        return (plots, paths);
    }

    private bool HasColumns(string[] columns)
    {
        string[] needed = [Plot, Block, Bay, .. FactorNames];
        var known = true;
        foreach (var missing in needed.Where(name => !columns.Contains(name, StringComparer.Ordinal)))
        {
            Note(1, $"no column '{missing}'", $"the columns {string.Join(", ", needed)}", "Add the column.");
            known = false;
        }

        foreach (var column in columns.Where((name, index) => Array.IndexOf(columns, name) != index).Distinct(StringComparer.Ordinal))
        {
            Note(1, $"the column '{column}' more than once", "each column once", "Remove one.");
            known = false;
        }

        foreach (var unknown in columns.Where(name => name != MainPlot && !needed.Contains(name, StringComparer.Ordinal)))
        {
            Note(1, $"the column '{unknown}'", $"the columns {string.Join(", ", needed)}, and {MainPlot} for a split-plot", "Remove the column or correct its name.");
            known = false;
        }

        return known;
    }

    private TrialPlot? ReadLine(string[] columns, string line, int number)
    {
        var cells = line.Split(',');
        if (cells.Length != columns.Length)
        {
            Note(number, $"{cells.Length} cells", $"{columns.Length}, as many as columns", "Complete the line; codes and levels hold no commas.");
            return null;
        }

        if (Array.FindIndex(cells, IsBroken) is var broken and >= 0)
        {
            Note(number, $"'{cells[broken]}' in column '{columns[broken]}'", "a text without quotes or blanks around it", "Correct the cell.");
            return null;
        }

        string Cell(string column) => cells[Array.IndexOf(columns, column)];
        return new TrialPlot(
            Cell(Plot),
            Cell(Block),
            columns.Contains(MainPlot, StringComparer.Ordinal) ? Cell(MainPlot) : null,
            Cell(Bay),
            FactorNames.ToDictionary(name => name, Cell, StringComparer.Ordinal));
    }

    private static bool IsBroken(string cell) =>
        cell.Length is 0 or > 64 || cell.Contains('"', StringComparison.Ordinal) || cell.Trim().Length != cell.Length || cell.Any(char.IsControl);

    private string PathOf(int line) => string.Create(CultureInfo.InvariantCulture, $"{fileName} line {line}");

    private void Note(int line, string found, string expected, string advice) => faults.Add(new PlanFault(PathOf(line), found, expected, advice));
}
