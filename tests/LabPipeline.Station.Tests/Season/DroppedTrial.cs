using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using LabPipeline.Hosting;
using LabPipeline.Station.Demo;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Plan;
using Microsoft.Data.Sqlite;
using Spectre.Console.Testing;

namespace LabPipeline.Station.Tests.Season;

/// <summary>A published trial written as an instrument file, dropped, and taken through the whole pipeline.</summary>
/// <remarks>Each yield y becomes a weighing of 100 g of slices and y g of chips; the pipeline's fry yield in % is then y again.</remarks>
internal sealed class DroppedTrial : IDisposable
{
    public const string Code = "PUB-25";

    private readonly ScratchFolder _folder = new();

    public static async Task<DroppedTrial> CreateAsync(JsonObject design, IReadOnlyList<(JsonObject Plot, string Yield)> plots, JsonArray? contrasts = null)
    {
        var trial = new DroppedTrial();
        var document = PlanOf(design, plots.Select(plot => plot.Plot));
        if (contrasts is not null)
        {
            document["contrasts"] = contrasts;
        }

        var plan = Read(document);
        var barcodes = PlanSamples.Of(plan).ToDictionary(sample => sample.Plot.Code, sample => sample.Barcode.Text);
        var lines = plots.Select((plot, index) => $"{barcodes[(string)plot.Plot["plot"]!]},weighing 1,2025-10-06 09:{index / 2 % 60:D2},100,{plot.Yield}");
        var scenario = new DemoScenario
        {
            Plan = plan,
            Documents = [new DemoDocument("profiles/balance", "chips.json", Profile)],
            Files = [new DemoFile("balance", "chips_2025-10-06.csv", Encoding.UTF8.GetBytes("sample,session,at,slices,chips\n" + string.Join("\n", lines) + "\n"), new DateTimeOffset(2025, 10, 6, 20, 0, 0, TimeSpan.Zero))],
            Corrections = [],
            Troubles = [],
        };
        var lab = new LabOptions { DataFolder = trial._folder.Path };
        new DemoWriter(lab).Write(scenario);
        await new DemoRun(lab).RunAsync(scenario, (_, _) => { }, TestContext.Current.CancellationToken);
        return trial;
    }

    public string Path(string name) => _folder.File(name);

    public async Task<string> RunAsync(params string[] arguments)
    {
        using var console = new TestConsole();
        console.Profile.Width = 400;
        using var errors = new StringWriter();
        var exitCode = await StationApp.RunAsync([.. arguments, "--data", _folder.Path], console, errors);
        Assert.True(exitCode == ExitCode.Done, errors.ToString() + console.Output);
        return console.Output;
    }

    /// <summary>Cells of the printed line of a term, without its frame; an empty stratum is a table with one error.</summary>
    public static IReadOnlyList<string> LineOf(string printed, string stratum, string term) =>
        printed.Split('\n').Select(line => line.Split('│', StringSplitOptions.TrimEntries))
            .Where(cells => cells.Length > 8 && cells[1] == stratum && cells[2] == term).Select(cells => cells[3..^1]).First();

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
    }

    private static TrialPlan Read(JsonObject document)
    {
        var result = PlanDocument.Parse(document.ToJsonString(), "plan.json");
        Assert.Empty(result.Faults.Select(fault => fault.Describe("plan.json")));
        return result.Plan!;
    }

    private static JsonObject PlanOf(JsonObject design, IEnumerable<JsonObject> plots) => new()
    {
        ["schema"] = 1,
        ["trial"] = JsonNode.Parse(string.Create(CultureInfo.InvariantCulture,
            $$"""{ "code": "{{Code}}", "mark": "PB", "title": "A published trial", "question": "Do the tables agree?", "season": 2025, "site": "From a table", "timeZone": "America/Chicago", "harvestedOn": "2025-09-09" }""")),
        ["design"] = design,
        ["bays"] = JsonNode.Parse("""[{ "code": "B1" }]"""),
        ["plots"] = new JsonArray([.. plots]),
        ["pulls"] = JsonNode.Parse("""[{ "number": 1, "due": "2025-10-06", "opens": "2025-10-06", "closes": "2025-10-10" }]"""),
        ["samples"] = JsonNode.Parse("""{ "tubers": 5, "slicesPerTuber": 2, "extracts": 2 }"""),
        ["results"] = new JsonObject
        {
            ["dryMatterRelation"] = "dry_matter_von_scheele_1937",
            ["darkBelowHunterL"] = 55,
            ["severeFromScore"] = 3,
            ["standardClone"] = (string)design["factors"]![0]!["levels"]![0]!,
        },
        ["expected"] = JsonNode.Parse("""[{ "quantity": "slice_mass", "readings": 1 }, { "quantity": "chip_mass", "readings": 1 }]"""),
    };

    private const string Profile =
        """
        {
          "schema": 1, "name": "chip-balance", "version": 1, "kind": "balance",
          "instrument": { "constant": "bench balance" },
          "method": { "name": "fry yield by mass", "version": "1" },
          "files": { "match": ["chips_*.csv"], "complete": "final-newline", "quietSeconds": 1 },
          "text": { "encoding": "utf-8", "layout": "delimited", "decimalMark": "point", "delimiter": ",", "quote": "\"", "headerLine": 1 },
          "identity": { "barcode": { "column": "sample" }, "run": { "column": "session" } },
          "time": { "columns": ["at"], "formats": ["yyyy-MM-dd HH:mm"], "zone": "America/Chicago" },
          "quantities": [
            { "quantity": "slice_mass", "column": "slices", "unit": "g" },
            { "quantity": "chip_mass", "column": "chips", "unit": "g" }
          ]
        }
        """;
}
