using System.Text.Json;

namespace LabPipeline.Board.Alerts;

/// <summary>The facts an alert rests on, in the order the rule wrote them.</summary>
internal static class FactList
{
    /// <summary>Names and values of a JSON object of texts; empty when <paramref name="json"/> is none.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Of(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json);
            return document.RootElement.ValueKind == JsonValueKind.Object
                ? [.. document.RootElement.EnumerateObject().Select(fact => KeyValuePair.Create(fact.Name, fact.Value.ToString()))]
                : [];
        }
        catch (JsonException)
        {
            return [];
        }
    }
}
