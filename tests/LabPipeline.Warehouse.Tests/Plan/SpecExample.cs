using System.Reflection;
using System.Text.Json.Nodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

/// <summary>The example of docs/specs/trial-plan.md, whole or with something changed in it.</summary>
internal static class SpecExample
{
    public const string Name = "plan.json";

    public static string Json => Section("json");

    public static string PlotsCsv => Section("csv");

    public static TrialPlan Plan => Load(Json);

    public static TrialPlan Load(string json)
    {
        var result = PlanDocument.Parse(json, Name);
        Assert.Empty(result.Faults.Select(fault => fault.Describe(Name)));
        return result.Plan!;
    }

    public static TrialPlan PlanWith(Action<JsonObject> change) => Load(JsonWith(change));

    public static string JsonWith(Action<JsonObject> change)
    {
        var root = JsonNode.Parse(Json)!.AsObject();
        change(root);
        return root.ToJsonString();
    }

    private static string Section(string language)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("docs/specs/trial-plan.md")!;
        using var reader = new StreamReader(stream);
        var text = reader.ReadToEnd().ReplaceLineEndings("\n");
        var start = text.IndexOf($"```{language}\n", StringComparison.Ordinal) + language.Length + 4;
        return text[start..text.IndexOf("```", start, StringComparison.Ordinal)];
    }
}
