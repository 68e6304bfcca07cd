using System.Text.Json;
using System.Text.Json.Serialization;

namespace LabPipeline.Reporting.Labels;

/// <summary>Reads a sheet's geometry from a JSON document (docs/specs/labels.md).</summary>
public static class LabelSheetFile
{
    private static readonly JsonSerializerOptions Strict = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
    };

    /// <summary>The sheet <paramref name="text"/> describes, or every fault in it.</summary>
    public static (LabelSheet? Sheet, IReadOnlyList<LabelFault> Faults) Read(string text, string name)
    {
        try
        {
            var sheet = JsonSerializer.Deserialize<LabelSheet>(text, Strict);
            var faults = sheet is null ? [new LabelFault(name, "nothing", "a sheet's geometry", "See docs/specs/labels.md.")] : LabelSheetChecks.Of(sheet);
            return faults.Count == 0 ? (sheet, []) : (null, faults);
        }
        catch (JsonException fault)
        {
            return (null, [new LabelFault(name, $"text that is no sheet ({fault.Message})", "a JSON object with every member of a sheet once", "See docs/specs/labels.md.")]);
        }
    }
}
