using System.Globalization;
using System.Text;
using System.Text.Json;

namespace LabPipeline.Board.Api;

/// <summary>Rows as comma-separated text (RFC 4180), columns named as in the JSON.</summary>
internal static class ApiCsv
{
    public static string Of<T>(IEnumerable<T> rows)
    {
        var columns = typeof(T).GetProperties();
        var text = new StringBuilder();
        text.AppendJoin(',', columns.Select(column => JsonNamingPolicy.SnakeCaseLower.ConvertName(column.Name))).Append("\r\n");
        foreach (var row in rows)
        {
            text.AppendJoin(',', columns.Select(column => Quoted(Text(column.GetValue(row))))).Append("\r\n");
        }

        return text.ToString();
    }

    private static string Text(object? value) => value switch
    {
        null => "",
        bool yes => yes ? "true" : "false",
        DateOnly date => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        DateTimeOffset instant => instant.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString()!,
    };

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny("\",\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
