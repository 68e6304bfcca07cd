using System.Globalization;
using System.Text;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Benchmarks;

/// <summary>Invented trials with a sample for every file, and the files: two extracts that disagree in glucose and in nothing else.</summary>
internal static class LatencyTrials
{
    public const string Profile = """
        {
          "schema": 1, "name": "latency-sugars", "version": 1, "kind": "sugar",
          "instrument": { "constant": "SUG-1" },
          "method": { "name": "oxidase", "version": "1" },
          "files": { "match": ["*.csv"], "complete": "renamed-in" },
          "text": { "encoding": "utf-8", "layout": "delimited", "delimiter": ",", "quote": "\"", "decimalMark": "point", "headerLine": 1 },
          "time": { "columns": ["Time"], "formats": ["yyyy-MM-dd HH:mm:ss"], "zone": "Etc/UTC" },
          "identity": { "barcode": { "column": "Sample" }, "run": { "column": "Run" }, "extract": { "column": "Extract" } },
          "quantities": [
            { "quantity": "extract_fresh_mass", "column": "Mass", "unit": "g" },
            { "quantity": "extract_volume", "column": "Volume", "unit": "mL" },
            { "quantity": "dilution_factor", "column": "Dilution", "unit": "1" },
            { "quantity": "glucose_in_extract", "column": "Glucose", "unit": "g/L" }
          ]
        }
        """;

    private const int Clones = 20;
    private const int Blocks = 40;

    // No I, O or Q: they are in no barcode.
    private const string Marks = "ABCDEFGHJK";

    /// <summary>At least so many samples in trials whose only pull is open today; a trial holds 800.</summary>
    public static IReadOnlyList<TrialPlan> Plans(int samples, DateOnly today)
    {
        var trials = (samples + (Clones * Blocks) - 1) / (Clones * Blocks);
        return trials <= Marks.Length
            ? [.. Marks.Take(trials).Select(mark => PlanDocument.Parse(Document(mark, today), "latency").Plan!)]
            : throw new ArgumentException($"Found {samples} files, expected at most {Marks.Length * Clones * Blocks}; lower rate or seconds.", nameof(samples));
    }

    /// <summary>Glucose of 0.25 and 0.35 mg/g: far apart for duplicates, and no ratio that a forgotten dilution leaves.</summary>
    public static string FileOf(string barcode, DateTimeOffset now) => string.Create(
        CultureInfo.InvariantCulture,
        $"Sample,Run,Extract,Mass,Volume,Dilution,Glucose,Time\n{barcode},R-{barcode},1,50,250,1,0.05,{now:yyyy-MM-dd HH:mm:ss}\n{barcode},R-{barcode},2,50,250,1,0.07,{now:yyyy-MM-dd HH:mm:ss}\n");

    private static string Document(char mark, DateOnly today)
    {
        var clones = string.Join(", ", Enumerable.Range(1, Clones).Select(clone => $"\"{CloneOf(clone)}\""));
        var blocks = string.Join(", ", Enumerable.Range(1, Blocks).Select(block => string.Create(CultureInfo.InvariantCulture, $"\"{block}\"")));
        return string.Create(CultureInfo.InvariantCulture, $$"""
            {
              "schema": 1,
              "trial": {
                "code": "LATENCY-{{mark}}", "mark": "L{{mark}}", "title": "Latency", "question": "How soon is an alert told?", "season": {{today.Year}},
                "site": "nowhere", "timeZone": "Etc/UTC", "harvestedOn": "{{today:yyyy-MM-dd}}"
              },
              "design": { "kind": "rcbd", "blocks": [{{blocks}}], "factors": [{ "name": "clone", "levels": [{{clones}}] }], "clone": "clone" },
              "bays": [{ "code": "B1", "setPointC": 8.9 }],
              "plots": [{{Plots()}}],
              "pulls": [{ "number": 1, "due": "{{today:yyyy-MM-dd}}", "opens": "{{today:yyyy-MM-dd}}", "closes": "{{today.AddDays(4):yyyy-MM-dd}}" }],
              "samples": { "tubers": 10, "slicesPerTuber": 3, "extracts": 2 },
              "results": { "dryMatterRelation": "dry_matter_von_scheele_1937", "darkBelowHunterL": 55, "severeFromScore": 3, "standardClone": "{{CloneOf(1)}}" },
              "expected": [{ "quantity": "glucose_in_extract", "readings": 2 }],
              "repeatability": [{ "quantity": "glucose", "constant": 0.0014, "relative": 0.025, "pairs": 40, "source": "invented" }]
            }
            """);
    }

    private static string Plots()
    {
        var plots = new StringBuilder();
        for (var plot = 0; plot < Clones * Blocks; plot++)
        {
            plots.Append(plot == 0 ? "" : ",").Append(string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "plot": "{{plot + 1}}", "block": "{{(plot / Clones) + 1}}", "bay": "B1", "levels": { "clone": "{{CloneOf((plot % Clones) + 1)}}" } }"""));
        }

        return plots.ToString();
    }

    private static string CloneOf(int clone) => string.Create(CultureInfo.InvariantCulture, $"LT-{clone:00}");
}
