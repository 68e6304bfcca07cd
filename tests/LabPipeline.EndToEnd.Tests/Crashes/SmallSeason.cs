using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.EndToEnd.Tests.Crashes;

/// <summary>An invented trial with a handful of small files for each round; rounds share no sample, so their order changes nothing.</summary>
internal sealed class SmallSeason
{
    private const int SamplesPerRound = 3;
    private const int Clones = 8;
    private const int FewestPulls = 4;
    private const int DaysPerPull = 3;

    private static readonly DateOnly FirstPull = new(2098, 10, 10);

    private readonly IReadOnlyList<string> _barcodes;

    public SmallSeason(int rounds)
    {
        var samples = rounds * SamplesPerRound;
        var pulls = Math.Max(FewestPulls, (samples / (PlanSamples.MostPlots - Clones)) + 1);
        var result = PlanDocument.Parse(PlanText((samples / (Clones * pulls)) + 1, pulls), "plan.json");
        Plan = result.Plan ?? throw new InvalidOperationException(string.Join(' ', result.Faults.Select(fault => fault.Describe("plan.json"))));
        _barcodes = [.. PlanSamples.Of(Plan).Select(sample => sample.Barcode.Text)];
    }

    public static string Profile { get; } = ProfileText("small-csv", "*.csv", "renamed-in");

    public static string DoneFileProfile { get; } = ProfileText("small-txt", "*.txt", "done-file");

    public TrialPlan Plan { get; }

    /// <summary>The files of one round, by name: a good one, disagreeing duplicates, one that is refused, one with a done file, and the first one again.</summary>
    public IReadOnlyList<(string Name, byte[] Bytes)> FilesOf(int round)
    {
        var samples = _barcodes.Skip(round * SamplesPerRound).Take(SamplesPerRound).ToList();
        var good = Rows(round, 'a', samples[0], "5.20", "5.21");
        return
        [
            (Name(round, "a.csv"), good),
            (Name(round, "b.csv"), Rows(round, 'b', samples[1], "4.10", "8.90")),
            (Name(round, "c.csv"), Rows(round, 'c', samples[0], "5.20", "n/a")),
            (Name(round, "d.txt"), Rows(round, 'd', samples[2], "6.30", "6.31")),
            (Name(round, "d.txt.done"), []),
            (Name(round, "e.csv"), good),
        ];
    }

    /// <summary>What must be stored of a round, as a row of the warehouse reads: barcode, run, key, raw value.</summary>
    public IEnumerable<string> GlucoseOf(int round)
    {
        var samples = _barcodes.Skip(round * SamplesPerRound).Take(SamplesPerRound).ToList();
        return new[] { ('a', samples[0], "5.20", "5.21"), ('b', samples[1], "4.10", "8.90"), ('d', samples[2], "6.30", "6.31") }
            .SelectMany(file => new[] { Row(file.Item1, 1, file.Item2, file.Item3), Row(file.Item1, 2, file.Item2, file.Item4) });

        string Row(char file, int key, string barcode, string value) => string.Create(CultureInfo.InvariantCulture, $"{barcode} R{round}{file} {key} {value}");
    }

    private static string Name(int round, string ending) => string.Create(CultureInfo.InvariantCulture, $"{round:D5}-{ending}");

    private static byte[] Rows(int round, char file, string barcode, string one, string two) => Encoding.UTF8.GetBytes(string.Create(
        CultureInfo.InvariantCulture,
        $"sample,run,seq,extract,mass,volume,dilution,glucose\n{barcode},R{round}{file},1,A,10.0,100,1,{one}\n{barcode},R{round}{file},2,B,10.0,100,1,{two}\n"));

    private static string ProfileText(string name, string match, string complete) => $$"""
        {
          "schema": 1, "name": "{{name}}", "version": 1, "kind": "sugar",
          "instrument": { "constant": "SUG-1" },
          "method": { "name": "oxidase", "version": "2" },
          "files": { "match": ["{{match}}"], "complete": "{{complete}}" },
          "text": { "encoding": "utf-8", "layout": "delimited", "delimiter": ",", "quote": "\"", "decimalMark": "point", "headerLine": 1 },
          "identity": { "barcode": { "column": "sample" }, "run": { "column": "run" }, "extract": { "column": "extract" } },
          "rowKey": ["seq"],
          "quantities": [
            { "quantity": "extract_fresh_mass", "column": "mass", "unit": "g" },
            { "quantity": "extract_volume", "column": "volume", "unit": "mL" },
            { "quantity": "dilution_factor", "column": "dilution", "unit": "1" },
            { "quantity": "glucose_in_extract", "column": "glucose", "unit": "mg/dL" }
          ]
        }
        """;

    /// <summary>Its pulls lie so far ahead that none is missed while the test runs.</summary>
    private static string PlanText(int blocks, int pulls)
    {
        var clones = Enumerable.Range(1, Clones).Select(number => string.Create(CultureInfo.InvariantCulture, $"KT-{100 + number}")).ToList();
        var plots = Enumerable.Range(1, blocks).SelectMany(block => clones.Select((clone, place) => new JsonObject
        {
            ["plot"] = string.Create(CultureInfo.InvariantCulture, $"{block}-{place + 1}"),
            ["block"] = block.ToString(CultureInfo.InvariantCulture),
            ["bay"] = "B1",
            ["levels"] = new JsonObject { ["clone"] = clone },
        }));
        var windows = Enumerable.Range(0, pulls).Select(number => FirstPull.AddDays(number * DaysPerPull)).Select((day, index) => new JsonObject
        {
            ["number"] = index + 1,
            ["due"] = Iso(day),
            ["opens"] = Iso(day),
            ["closes"] = Iso(day.AddDays(DaysPerPull - 1)),
        });
        return JsonSerializer.Serialize(new JsonObject
        {
            ["schema"] = 1,
            ["trial"] = new JsonObject
            {
                ["code"] = "CRASH-98",
                ["mark"] = "CR",
                ["title"] = "Power cuts",
                ["question"] = "Does anything get lost?",
                ["season"] = 2098,
                ["site"] = "nowhere",
                ["timeZone"] = "UTC",
                ["harvestedOn"] = "2098-09-16",
            },
            ["design"] = new JsonObject
            {
                ["kind"] = "rcbd",
                ["blocks"] = new JsonArray([.. Enumerable.Range(1, blocks).Select(block => (JsonNode)block.ToString(CultureInfo.InvariantCulture))]),
                ["factors"] = new JsonArray(new JsonObject { ["name"] = "clone", ["levels"] = new JsonArray([.. clones.Select(clone => (JsonNode)clone)]) }),
                ["clone"] = "clone",
            },
            ["bays"] = new JsonArray(new JsonObject { ["code"] = "B1", ["setPointC"] = 8.9 }),
            ["plots"] = new JsonArray([.. plots]),
            ["pulls"] = new JsonArray([.. windows]),
            ["samples"] = new JsonObject { ["tubers"] = 10, ["slicesPerTuber"] = 3, ["extracts"] = 2 },
            ["results"] = new JsonObject
            {
                ["dryMatterRelation"] = "dry_matter_von_scheele_1937",
                ["darkBelowHunterL"] = 55,
                ["severeFromScore"] = 3,
                ["standardClone"] = clones[0],
            },
            ["expected"] = new JsonArray(new JsonObject { ["quantity"] = "glucose_in_extract", ["readings"] = 2 }),
        });
    }

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
