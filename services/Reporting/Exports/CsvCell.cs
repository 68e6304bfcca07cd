using System.Globalization;
using LabPipeline.Warehouse;

namespace LabPipeline.Reporting.Exports;

/// <summary>How one value of the warehouse is written into a comma-separated file.</summary>
internal static class CsvCell
{
    private const char Guard = '\'';
    private const string FormulaStarts = "=+-@\t\r";
    private const string NeedsQuotes = ",\"\r\n";

    /// <summary>Only text is ever guarded or quoted; a number is written as the warehouse holds it, with every digit.</summary>
    public static string Of(object value) => value switch
    {
        DBNull => "",
        string text => Quoted(Guarded(text)),
        double real => Plain(real),
        // Dividing by a long one drops the zeros that decimal(28, 12) adds.
        decimal exact => (exact / 1.0000000000000000000000000000m).ToString(CultureInfo.InvariantCulture),
        long or int or short or byte => ((IFormattable)value).ToString(null, CultureInfo.InvariantCulture),
        bool flag => flag ? "1" : "0",
        DateTimeOffset instant => DapperTypes.InstantText(instant),
        // SQL Server's date; instants have their own type in the warehouse.
        DateTime day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        _ => throw new ArgumentException($"Found a {value.GetType().Name}; a cell takes text, a number, a date, an instant or nothing.", nameof(value)),
    };

    /// <summary>A spreadsheet would compute such text. Text that looks guarded already is guarded again, so that one quote off always gives it back.</summary>
    private static string Guarded(string text) =>
        text.AsSpan().TrimStart(Guard) is [var first, ..] && FormulaStarts.Contains(first, StringComparison.Ordinal) ? Guard + text : text;

    // Empty text in quotes, nothing without: a reader that looks can tell them apart.
    private static string Quoted(string text) =>
        text.Length == 0 || text.AsSpan().ContainsAny(NeedsQuotes) ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;

    /// <summary>The shortest digits that read back as the same number, without an exponent where that is exact.</summary>
    private static string Plain(double real)
    {
        var shortest = real.ToString("R", CultureInfo.InvariantCulture);
        if (!shortest.Contains('E', StringComparison.Ordinal) || !decimal.TryParse(shortest, NumberStyles.Float, CultureInfo.InvariantCulture, out var exact))
        {
            return shortest;
        }

        var plain = exact.ToString(CultureInfo.InvariantCulture);
        return double.Parse(plain, CultureInfo.InvariantCulture).Equals(real) ? plain : shortest;
    }
}
