using System.Globalization;

namespace LabPipeline.Testing;

/// <summary>A row of a <see cref="ReferenceTable"/>.</summary>
public sealed class ReferenceRow(ReferenceTable table, int line, string[] cells)
{
    public int Line => line;

    public string Text(string column)
    {
        var index = table.IndexOf(column);
        return index < cells.Length ? cells[index] : "";
    }

    public bool Has(string column) => Text(column).Length > 0;

    public double Number(string column) => double.Parse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture);

    public decimal Exact(string column) => decimal.Parse(Text(column), NumberStyles.Float, CultureInfo.InvariantCulture);

    public int Count(string column) => int.Parse(Text(column), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    public IReadOnlyList<double> Numbers(string column) =>
        [.. Text(column).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(part => double.Parse(part, NumberStyles.Float, CultureInfo.InvariantCulture))];

    public override string ToString() => $"{table.Name} line {line}";
}
