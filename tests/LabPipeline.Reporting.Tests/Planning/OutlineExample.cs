using System.Text.Json.Nodes;
using LabPipeline.Reporting.Planning;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Tests.Planning;

/// <summary>An outline of an invented trial, whole or with something changed in it.</summary>
internal static class OutlineExample
{
    public const string Name = "outline.json";

    private const string Json =
        """
        {
          "schema": 1,
          "trial": { "code": "VK-RATE-26", "mark": "VR", "title": "Vine kill and nitrogen", "question": "Does early vine kill keep sugars low?", "season": 2026,
                     "site": "Field 2", "timeZone": "America/Chicago", "harvestedOn": "2026-09-16" },
          "design": { "kind": "factorial-rcbd", "blocks": ["1", "2", "3", "4"], "clone": "clone",
                      "factors": [{ "name": "clone", "levels": ["KT-104", "KT-118", "KT-127"] }, { "name": "nitrogen", "unit": "kg/ha", "levels": ["120", "200"] }] },
          "bays": [{ "code": "B1", "setPointC": 8.9 }, { "code": "B2", "setPointC": 8.9 }],
          "pulls": [{ "number": 1, "due": 19, "opens": 19, "closes": 23 }, { "number": 2, "due": 47, "opens": 46, "closes": 51 },
                    { "number": 3, "due": "2027-02-01", "opens": "2027-02-01", "closes": "2027-02-05" }],
          "samples": { "tubers": 10, "slicesPerTuber": 3, "extracts": 2 },
          "results": { "dryMatterRelation": "dry_matter_von_scheele_1937", "darkBelowHunterL": 55, "severeFromScore": 3, "standardClone": "KT-104" },
          "expected": [{ "quantity": "glucose_in_extract", "readings": 2 }]
        }
        """;

    public static string JsonWith(Action<JsonObject>? change = null)
    {
        var root = JsonNode.Parse(Json)!.AsObject();
        change?.Invoke(root);
        return root.ToJsonString();
    }

    public static PlanOutline Outline(Action<JsonObject>? change = null)
    {
        var (outline, faults) = PlanOutline.Read(JsonWith(change), Name);
        Assert.Empty(faults.Select(fault => fault.Describe(Name)));
        return outline!;
    }

    public static IReadOnlyList<PlanFault> Faults(Action<JsonObject> change) => PlanOutline.Read(JsonWith(change), Name).Faults;

    public static TrialPlan Plan(long seed = 20260115, Action<JsonObject>? change = null) => DrawnPlan.Of(Outline(change), seed).Plan;

    /// <summary>The clone on main plots, three nitrogen rates and two vine kills within.</summary>
    public static void AsSplitPlot(JsonObject root)
    {
        root["design"]!["kind"] = "split-plot";
        root["design"]!["mainPlot"] = "nitrogen";
    }
}
