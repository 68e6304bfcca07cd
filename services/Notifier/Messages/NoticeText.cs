using System.Globalization;
using System.Text;
using System.Text.Json;

namespace LabPipeline.Notifier.Messages;

/// <summary>Makes text that came from files safe to show: one line, no control or direction characters, of bounded length.</summary>
public static class NoticeText
{
    public const int LongestHeadline = 1000;

    /// <summary>Longer facts are left to the board.</summary>
    public const int LongestFacts = 8000;

    private const int LongestValue = 500;
    private const int MostFacts = 30;
    private const char Ellipsis = '…';

    /// <summary><paramref name="text"/> with every character that could break a header, a line or a terminal written as <c>\uXXXX</c>, cut with an ellipsis after <paramref name="longest"/> characters.</summary>
    public static string OneLine(string text, int longest)
    {
        if (text.Length <= longest && text.All(IsSafe))
        {
            return text;
        }

        var line = new StringBuilder(Math.Min(text.Length, longest));
        for (var index = 0; index < text.Length; index++)
        {
            var isPair = index + 1 < text.Length && char.IsSurrogatePair(text[index], text[index + 1]);
            var piece = isPair ? text.Substring(index, 2) : IsSafe(text[index]) ? text[index].ToString() : Escape(text[index]);
            if (line.Length + piece.Length > longest)
            {
                return line.Append(Ellipsis).ToString();
            }

            line.Append(piece);
            index += isPair ? 1 : 0;
        }

        return line.ToString();
    }

    /// <summary>The members of an alert's facts, in their order; text that is no JSON object is shown as it is.</summary>
    public static IReadOnlyList<Fact> FactsOf(string json)
    {
        if (json.Length > LongestFacts)
        {
            return [new Fact("facts", "too many to show here; see the board")];
        }

        try
        {
            using var document = JsonDocument.Parse(json);
            return document.RootElement.ValueKind == JsonValueKind.Object
                ? [.. document.RootElement.EnumerateObject().Take(MostFacts).Select(FactOf)]
                : [new Fact("facts", OneLine(json, LongestValue))];
        }
        catch (JsonException)
        {
            return [new Fact("facts", OneLine(json, LongestValue))];
        }
    }

    private static Fact FactOf(JsonProperty member) => new(
        OneLine(member.Name, LongestValue),
        OneLine(member.Value.ValueKind == JsonValueKind.String ? member.Value.GetString()! : member.Value.GetRawText(), LongestValue));

    // Format covers the marks that reverse or hide text; a lone surrogate cannot be encoded at all.
    private static bool IsSafe(char symbol) => char.GetUnicodeCategory(symbol) is not (UnicodeCategory.Control or UnicodeCategory.Format
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate);

    private static string Escape(char symbol) => string.Create(CultureInfo.InvariantCulture, $"\\u{(int)symbol:X4}");
}
