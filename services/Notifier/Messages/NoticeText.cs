using System.Text.Json;
using LabPipeline.Hosting;

namespace LabPipeline.Notifier.Messages;

/// <summary>Makes text that came from files safe to show: one line, no control or direction characters, of bounded length.</summary>
public static class NoticeText
{
    public const int LongestHeadline = 1000;

    /// <summary>Longer facts are left to the board.</summary>
    public const int LongestFacts = 8000;

    private const int LongestValue = 500;
    private const int MostFacts = 30;
    private const string Ellipsis = "…";

    /// <summary>The text on one line, with everything spelled out that could break a header, a line or a terminal.</summary>
    public static string OneLine(string text, int longest) => VisibleText.Of(text, longest, Ellipsis);

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
}
