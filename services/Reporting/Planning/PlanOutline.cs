using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Planning;

/// <summary>A plan document before its plots are drawn: no plots in it, and pulls may be given as days after harvest.</summary>
public sealed class PlanOutline
{
    private const string Drawn = "Leave it out: the program draws it.";
    private const int MostDays = 1000;

    private static readonly string[] PlotMembers = ["plots", "plotsFile"];
    private static readonly string[] PullDays = ["due", "opens", "closes"];

    private PlanOutline(JsonObject root, TrialPlan plan)
    {
        Root = root;
        Plan = plan;
    }

    /// <summary>The plan with every treatment in every block, in the order of the document: what is drawn from.</summary>
    public TrialPlan Plan { get; }

    /// <summary>The document with days turned into dates, without plots.</summary>
    internal JsonObject Root { get; }

    /// <summary>Reads an outline, or every fault in it.</summary>
    public static (PlanOutline? Outline, IReadOnlyList<PlanFault> Faults) Read(string text, string name)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (ParseObject(text) is not { } root)
        {
            // The document's own reader says where the text stops being JSON.
            return (null, PlanDocument.Parse(text, name).Faults);
        }

        if (Unwanted(root) is { Count: > 0 } unwanted)
        {
            return (null, unwanted);
        }

        PutDates(root);
        var systematic = root.DeepClone().AsObject();
        systematic["plots"] = new JsonArray([.. Systematic(root).Select(plot => PlotText.NodeOf(plot))]);
        var result = PlanDocument.Parse(systematic.ToJsonString(), name);
        return result.Plan is { } plan
            ? (new PlanOutline(root, plan), [])
            : (null, [.. result.Faults.Where(fault => !fault.Path.StartsWith("plots", StringComparison.Ordinal) || result.Faults.All(IsAboutPlots))]);
    }

    private static bool IsAboutPlots(PlanFault fault) => fault.Path.StartsWith("plots", StringComparison.Ordinal);

    private static JsonObject? ParseObject(string text)
    {
        try
        {
            return JsonNode.Parse(text, documentOptions: new JsonDocumentOptions { AllowDuplicateProperties = false }) as JsonObject;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static List<PlanFault> Unwanted(JsonObject root)
    {
        string[] paths = [.. PlotMembers.Where(root.ContainsKey), .. root["design"] is JsonObject design && design.ContainsKey("seed") ? ["design.seed"] : Array.Empty<string>()];
        return [.. paths.Select(path => new PlanFault(path, "a member that is drawn", "an outline without it", Drawn))];
    }

    /// <summary>Whole numbers in a pull are days after harvest; what is no such number is left for the document's checks to tell.</summary>
    private static void PutDates(JsonObject root)
    {
        if (root["pulls"] is not JsonArray pulls
            || !DateOnly.TryParseExact(TextOf((root["trial"] as JsonObject)?["harvestedOn"]), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var harvestedOn))
        {
            return;
        }

        foreach (var pull in pulls.OfType<JsonObject>())
        {
            foreach (var member in PullDays)
            {
                if (pull[member] is JsonValue value && value.GetValueKind() == JsonValueKind.Number && value.TryGetValue<int>(out var days) && Math.Abs(days) <= MostDays)
                {
                    pull[member] = harvestedOn.AddDays(days).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
                }
            }
        }
    }

    /// <summary>Plots enough for the document's checks; none where the design cannot be read.</summary>
    private static IReadOnlyList<TrialPlot> Systematic(JsonObject root)
    {
        var design = root["design"] as JsonObject;
        var blocks = TextsOf(design?["blocks"]);
        var factors = (design?["factors"] as JsonArray)?.OfType<JsonObject>()
            .Select(factor => new TrialFactor(TextOf(factor["name"]) ?? "", TextOf(factor["unit"]), TextsOf(factor["levels"]))).ToList();
        var bays = (root["bays"] as JsonArray)?.OfType<JsonObject>().Select(bay => TextOf(bay["code"]) ?? "").ToList();
        if (factors is not { Count: > 0 } || bays is not { Count: > 0 } || factors.DistinctBy(factor => factor.Name).Count() != factors.Count)
        {
            return [];
        }

        var mainPlot = TextOf(design!["kind"]) == DesignNames.Of(DesignKind.SplitPlot) ? TextOf(design["mainPlot"]) : null;
        return new PlotNumbering(blocks, bays, factors, mainPlot).Number((treatments, _) => treatments);
    }

    private static IReadOnlyList<string> TextsOf(JsonNode? node) => [.. (node as JsonArray ?? []).Select(TextOf).OfType<string>()];

    private static string? TextOf(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
