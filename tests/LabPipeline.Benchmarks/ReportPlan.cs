using System.Globalization;
using System.Text.Json.Nodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Benchmarks;

/// <summary>Plans of an invented trial of any size: clones by four rates in four blocks, eight pulls.</summary>
internal static class ReportPlan
{
    public const string TrialCode = "BM-SEASON-25";

    private const int Blocks = 4;

    private static readonly string[] Rates = ["60", "120", "180", "240"];

    private static readonly DateOnly Harvest = new(2025, 9, 9);

    /// <summary>The smallest trial; others are whole multiples of it.</summary>
    public const int SmallestPlots = 48;

    public static IReadOnlyList<int> PullDays { get; } = [27, 55, 83, 118, 146, 174, 209, 237];

    /// <param name="plots">A multiple of 16.</param>
    /// <param name="splitPlot">Clones on main plots; otherwise everything in randomised blocks.</param>
    public static TrialPlan Of(int plots, bool splitPlot)
    {
        var result = PlanDocument.Parse(Document(plots / (Blocks * Rates.Length), splitPlot).ToJsonString(), "plan.json");
        return result.Plan ?? throw new InvalidOperationException(string.Join(Environment.NewLine, result.Faults.Select(fault => fault.Describe("plan.json"))));
    }

    private static JsonObject Document(int clones, bool splitPlot)
    {
        string[] names = [.. Enumerable.Range(101, clones).Select(number => $"BM-{number}")];
        var design = new JsonObject
        {
            ["kind"] = splitPlot ? "split-plot" : "factorial-rcbd",
            ["blocks"] = Texts(Enumerable.Range(1, Blocks).Select(Text)),
            ["factors"] = new JsonArray(
                new JsonObject { ["name"] = "clone", ["levels"] = Texts(names) },
                new JsonObject { ["name"] = "nitrogen", ["unit"] = "kg/ha", ["levels"] = Texts(Rates) }),
            ["clone"] = "clone",
        };
        if (splitPlot)
        {
            design["mainPlot"] = "clone";
        }

        return new JsonObject
        {
            ["schema"] = 1,
            ["trial"] = JsonNode.Parse($$"""
                { "code": "{{TrialCode}}", "mark": "BM", "title": "A season to measure the report with", "question": "How long does the report take?", "season": 2025,
                  "site": "Field 1", "timeZone": "America/Chicago", "harvestedOn": "{{Day(0)}}" }
                """),
            ["design"] = design,
            ["bays"] = JsonNode.Parse("""[{ "code": "B1", "setPointC": 8.9 }]"""),
            ["plots"] = new JsonArray([.. Enumerable.Range(1, Blocks).SelectMany(block => names.SelectMany((clone, main) => Rates.Select((rate, place) => (JsonNode)Plot(block, clone, main, rate, place, splitPlot))))]),
            ["pulls"] = new JsonArray([.. PullDays.Select((day, index) => (JsonNode)new JsonObject { ["number"] = index + 1, ["due"] = Day(day), ["opens"] = Day(day), ["closes"] = Day(day + 4) })]),
            ["samples"] = JsonNode.Parse("""{ "tubers": 5, "slicesPerTuber": 2, "extracts": 2 }"""),
            ["results"] = new JsonObject { ["dryMatterRelation"] = "dry_matter_von_scheele_1937", ["darkBelowHunterL"] = 55, ["severeFromScore"] = 3, ["standardClone"] = names[0] },
            ["expected"] = JsonNode.Parse("""
                [{ "quantity": "glucose_in_extract", "readings": 2 }, { "quantity": "total_glucose_in_extract", "readings": 2 },
                 { "quantity": "hunter_l", "readings": 10 }, { "quantity": "hunter_a", "readings": 10 }, { "quantity": "hunter_b", "readings": 10 },
                 { "quantity": "stem_end_defect", "readings": 10 }]
                """),
        };
    }

    private static JsonObject Plot(int block, string clone, int main, string rate, int place, bool splitPlot)
    {
        var plot = new JsonObject
        {
            ["plot"] = string.Create(CultureInfo.InvariantCulture, $"{block}{(main * Rates.Length) + place + 1:D3}"),
            ["block"] = Text(block),
            ["bay"] = "B1",
            ["levels"] = new JsonObject { ["clone"] = clone, ["nitrogen"] = rate },
        };
        if (splitPlot)
        {
            // Codes of main plots differ from block to block.
            plot["mainPlot"] = Text((1000 * block) + main + 1);
        }

        return plot;
    }

    private static string Day(int afterHarvest) => Harvest.AddDays(afterHarvest).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);
}
