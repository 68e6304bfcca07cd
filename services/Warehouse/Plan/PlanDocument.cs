using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Reads trial plan documents (docs/specs/trial-plan.md).</summary>
public static class PlanDocument
{
    /// <summary>The only document schema there is so far.</summary>
    public const int Schema = 1;

    /// <summary>The plan <paramref name="text"/> describes, or every fault in it.</summary>
    /// <param name="text">The JSON document.</param>
    /// <param name="name">Its name; names of files beside it are relative to it.</param>
    /// <param name="beside">Gives the text of a file beside the document, null when there is none.</param>
    public static PlanResult Parse(string text, string name, Func<string, string?>? beside = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentException.ThrowIfNullOrEmpty(name);
        var faults = new List<PlanFault>();
        try
        {
            using var document = JsonDocument.Parse(text);
            var root = new PlanNode(document.RootElement, "", faults);
            return IsKnownSchema(root) ? Read(root, text, beside ?? (_ => null), faults) : new PlanResult(null, faults);
        }
        catch (JsonException fault)
        {
            return new PlanResult(null, [NotJson(fault)]);
        }
    }

    private static PlanResult Read(PlanNode root, string text, Func<string, string?> beside, List<PlanFault> faults)
    {
        var plots = new PlotSource(beside);
        var draft = new PlanBinder(faults).Bind(root, plots);
        faults.AddRange(PlanChecks.Of(draft));
        return faults.Count > 0
            ? new PlanResult(null, faults)
            : new PlanResult(draft.Plan with { Sha256 = HashOf(text, plots.Text) }, []);
    }

    private static bool IsKnownSchema(PlanNode root)
    {
        var schema = root.Whole("schema", 1, int.MaxValue);
        if (schema is not (0 or Schema))
        {
            root.NoteAt("schema", schema.ToString(CultureInfo.InvariantCulture), "1", "Use the version of the program the document was made for.");
        }

        return schema == Schema;
    }

    private static string HashOf(string text, string? plots) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(plots is null ? text : $"{text}\0{plots}")));

    private static PlanFault NotJson(JsonException fault) => new(
        string.Create(CultureInfo.InvariantCulture, $"line {fault.LineNumber + 1}, byte {fault.BytePositionInLine + 1}"),
        "text that is not JSON",
        "a JSON document without comments or trailing commas",
        "Correct it there, or at the line before.");
}
