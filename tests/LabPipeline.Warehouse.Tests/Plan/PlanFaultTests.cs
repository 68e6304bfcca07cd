using System.Text.Json.Nodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

/// <summary>Every fault a plan can have, by place and by what was found. Sentences are ours, no source.</summary>
public sealed class PlanFaultTests
{
    private static readonly Dictionary<string, (Action<JsonObject> Break, string Path, string Found)> Faults = new(StringComparer.Ordinal)
    {
        ["no schema"] = (root => root.Remove("schema"), "schema", "nothing"),
        ["a seed that is not whole"] = (root => root["design"]!["seed"] = 1.5, "design.seed", "1.5"),
        ["unknown member"] = (root => root["trial"]!["sponsor"] = "none", "trial.sponsor", "a member nobody knows"),
        ["missing member"] = (root => root["trial"]!.AsObject().Remove("title"), "trial.title", "nothing"),
        ["missing object"] = (root => root.Remove("samples"), "samples", "nothing"),
        ["object that is a text"] = (root => root["samples"] = "ten", "samples", "\"ten\""),
        ["blank text"] = (root => root["trial"]!["site"] = " ", "trial.site", "\" \""),
        ["list that is empty"] = (root => root["bays"] = new JsonArray(), "bays", "[]"),
        ["number in quotes"] = (root => root["trial"]!["season"] = "2026", "trial.season", "\"2026\""),
        ["date in another order"] = (root => root["trial"]!["harvestedOn"] = "16.09.2026", "trial.harvestedOn", "\"16.09.2026\""),
        ["day that does not exist"] = (root => root["pulls"]![0]!["due"] = "2026-10-32", "pulls[0].due", "\"2026-10-32\""),
        ["negative count"] = (root => root["samples"]!["extracts"] = -2, "samples.extracts", "-2"),
        ["fraction for a count"] = (root => root["samples"]!["tubers"] = 2.5, "samples.tubers", "2.5"),
        ["code with a slash"] = (root => root["trial"]!["code"] = "EX/26", "trial.code", "'EX/26'"),
        ["mark with a letter people misread"] = (root => root["trial"]!["mark"] = "EO", "trial.mark", "'EO'"),
        ["mark too long"] = (root => root["trial"]!["mark"] = "EXAM", "trial.mark", "'EXAM'"),
        ["mark in small letters"] = (root => root["trial"]!["mark"] = "ex", "trial.mark", "'ex'"),
        ["unknown zone"] = (root => root["trial"]!["timeZone"] = "America/Chikago", "trial.timeZone", "'America/Chikago'"),
        ["harvest in another year"] = (root => root["trial"]!["harvestedOn"] = "2024-09-16", "trial.harvestedOn", "2024-09-16"),
        ["unknown design"] = (root => root["design"]!["kind"] = "latin-square", "design.kind", "'latin-square'"),
        ["design for other factors"] = (root => root["design"]!["kind"] = "rcbd", "design.factors", "2 factors"),
        ["split-plot without main plots"] = (SplitWithoutMainPlot, "plots[3]", "no main plot"),
        ["main plots without split-plot"] = (root => root["plots"]![0]!["mainPlot"] = "1A", "plots[0]", "main plot '1A'"),
        ["main-plot factor without split-plot"] = (root => root["design"]!["mainPlot"] = "nitrogen", "design.mainPlot", "'nitrogen'"),
        ["main-plot factor missing"] = (SplitWithoutFactor, "design.mainPlot", "nothing"),
        ["main plot with two levels"] = (SplitMixed, "plots[2]", "main plot '1-240' with nitrogen 120 in block '1'"),
        ["clone factor unknown"] = (root => root["design"]!["clone"] = "variety", "design.clone", "'variety'"),
        ["factor with a reserved name"] = (ReservedFactor, "design.factors[1].name", "'bay'"),
        ["factor with one level"] = (root => root["design"]!["factors"]![1]!["levels"]!.AsArray().RemoveAt(1), "design.factors[1].levels", "1 level"),
        ["word where a unit wants a number"] = (root => root["design"]!["factors"]![1]!["levels"]![0] = "low", "design.factors[1].levels", "'low'"),
        ["level listed twice"] = (root => root["design"]!["factors"]![0]!["levels"]!.AsArray().Add("kt-104"), "design.factors[0].levels", "'KT-104' 2 times"),
        ["standard that is no clone"] = (root => root["results"]!["standardClone"] = "KT-999", "results.standardClone", "'KT-999'"),
        ["unknown relation"] = (root => root["results"]!["dryMatterRelation"] = "ours", "results.dryMatterRelation", "'ours'"),
        ["relation that gives starch"] = (root => root["results"]!["dryMatterRelation"] = "starch_von_scheele_1937", "results.dryMatterRelation", "'starch_von_scheele_1937'"),
        ["unknown block"] = (root => root["plots"]![0]!["block"] = "9", "plots[0]", "block '9'"),
        ["unknown bay"] = (root => root["plots"]![0]!["bay"] = "B9", "plots[0]", "bay 'B9'"),
        ["unknown level"] = (root => root["plots"]![0]!["levels"]!["clone"] = "KT-9", "plots[0]", "'KT-9' for 'clone'"),
        ["plot missing a factor"] = (root => root["plots"]![0]!["levels"]!.AsObject().Remove("nitrogen"), "plots[0]", "no level of 'nitrogen'"),
        ["plot with an unknown factor"] = (root => root["plots"]![0]!["levels"]!["water"] = "much", "plots[0]", "the factor 'water'"),
        ["duplicate plot"] = (root => root["plots"]![7]!["plot"] = "101", "plots[7]", "the plot '101' again"),
        ["treatment repeated in a block"] = (root => root["plots"]![2]!["levels"]!["nitrogen"] = "240", "plots[2]", "clone KT-104, nitrogen 240 kg/ha in block '1' again, as in plot '101'"),
        ["treatment missing from a block"] = (root => root["plots"]!.AsArray().RemoveAt(7), "plots", "block '2' without clone KT-104, nitrogen 120 kg/ha"),
        ["plots and plots file"] = (root => root["plotsFile"] = "plots.csv", "plots", "both plots and plotsFile"),
        ["plots file that is not there"] = (root => root["plotsFile"] = "other.csv", "plotsFile", "'other.csv'"),
        ["plots file elsewhere"] = (root => root["plotsFile"] = "../plots.csv", "plotsFile", "'../plots.csv'"),
        ["pulls out of order"] = (root => root["pulls"]![2]!["number"] = 2, "pulls[2].number", "2"),
        ["windows overlapping"] = (root => root["pulls"]![1]!["opens"] = "2026-10-09", "pulls[1].opens", "2026-10-09"),
        ["window upside down"] = (root => root["pulls"]![2]!["closes"] = "2027-01-30", "pulls[2].closes", "2027-01-30"),
        ["due outside its window"] = (root => root["pulls"]![0]!["due"] = "2026-10-10", "pulls[0].due", "2026-10-10"),
        ["pull before harvest"] = (PullBeforeHarvest, "pulls[0].opens", "2026-09-01"),
        ["too many pulls for barcodes"] = (root => root["pulls"]![2]!["number"] = 100, "pulls[2].number", "100"),
        ["unknown quantity"] = (root => root["expected"]![0]!["quantity"] = "sweetness", "expected[0].quantity", "'sweetness'"),
        ["computed quantity expected"] = (root => root["expected"]![0]!["quantity"] = "glucose", "expected[0].quantity", "'glucose', which is computed"),
        ["quantity expected twice"] = (root => root["expected"]![1]!["quantity"] = "glucose_in_extract", "expected", "the quantity 'glucose_in_extract at pull 1' again"),
        ["no readings expected"] = (root => root["expected"]![0]!["readings"] = 0, "expected[0].readings", "0"),
        ["expected at an unknown pull"] = (root => root["expected"]![2]!["pulls"]![1] = 4, "expected[2].pulls", "pull 4"),
        ["repeatability of zero"] = (ZeroRepeatability, "repeatability[0].constant", "0 with relative 0"),
        ["contrast that does not add to 0"] = (root => root["contrasts"]![0]!["coefficients"]!["240"] = 2, "contrasts[0].coefficients", "coefficients that add to 1"),
        ["contrast of nothing"] = (root => root["contrasts"]![0]!["coefficients"] = new JsonObject { ["120"] = 0, ["240"] = 0 }, "contrasts[0].coefficients", "no coefficient but 0"),
        ["contrast with an unknown level"] = (root => root["contrasts"]![0]!["coefficients"]!["300"] = 0, "contrasts[0].coefficients", "'300'"),
        ["contrast of a combination with one level missing"] = (root => root["contrasts"]![1]!["coefficients"]!["KT-104"] = 0, "contrasts[1].coefficients", "'KT-104'"),
        ["contrast of an unknown factor"] = (root => root["contrasts"]![0]!["factors"]![0] = "water", "contrasts[0].factors", "'water'"),
        ["contrast with factors out of order"] = (root => root["contrasts"]![1]!["factors"] = new JsonArray("nitrogen", "clone"), "contrasts[1].factors", "'nitrogen, clone'"),
        ["contrast named twice"] = (root => root["contrasts"]![1]!["name"] = "late nitrogen", "contrasts[1]", "the contrast 'late nitrogen' again"),
        ["negative repeatability"] = (root => root["repeatability"]![0]!["relative"] = -0.1, "repeatability[0].relative", "-0.1"),
    };

    public static TheoryData<string> Cases => [.. Faults.Keys];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Parse_OfABrokenPlan_TellsPlaceAndFinding(string broken)
    {
        var (change, path, found) = Faults[broken];

        var result = PlanDocument.Parse(SpecExample.JsonWith(change), SpecExample.Name);

        Assert.False(result.IsValid);
        var fault = Assert.Single(result.Faults, fault => fault.Path == path && fault.Found == found);
        Assert.NotEmpty(fault.Expected);
        Assert.EndsWith(".", fault.Advice, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plot,block,bay,clone\n101,1,B1,KT-104\n", "plots.csv line 1", "no column 'nitrogen'")]
    [InlineData("plot,block,bay,clone,nitrogen,nitrogen\n", "plots.csv line 1", "the column 'nitrogen' more than once")]
    [InlineData("plot,block,bay,clone,nitrogen,row\n", "plots.csv line 1", "the column 'row'")]
    [InlineData("plot;block;bay;clone;nitrogen\n", "plots.csv line 1", "no column 'plot'")]
    [InlineData("plot,block,bay,clone,nitrogen\n", "plots.csv line 1", "a header and nothing else")]
    [InlineData("plot,block,bay,clone,nitrogen\n101,1,B1,KT-104\n", "plots.csv line 2", "4 cells")]
    [InlineData("plot,block,bay,clone,nitrogen\n101,1,B1,\"KT-104\",120\n", "plots.csv line 2", "'\"KT-104\"' in column 'clone'")]
    [InlineData("plot,block,bay,clone,nitrogen\n101,1,B1, KT-104,120\n", "plots.csv line 2", "' KT-104' in column 'clone'")]
    [InlineData("plot,block,bay,clone,nitrogen\n101,1,B1,,120\n", "plots.csv line 2", "'' in column 'clone'")]
    [InlineData("plot,block,bay,clone,nitrogen\n101,1,B1,KT-7,120\n", "plots.csv line 2", "'KT-7' for 'clone'")]
    public void Parse_OfABrokenPlotsFile_TellsLineAndFinding(string csv, string path, string found)
    {
        var json = SpecExample.JsonWith(root =>
        {
            root.Remove("plots");
            root["plotsFile"] = "plots.csv";
        });

        var result = PlanDocument.Parse(json, SpecExample.Name, _ => csv);

        Assert.Single(result.Faults, fault => fault.Path == path && fault.Found == found);
    }

    [Fact]
    public void Parse_OfMorePlotsThanBarcodes_IsRefused()
    {
        var levels = Enumerable.Range(1, 600).Select(number => $"KT-{number}").ToList();
        var json = SpecExample.JsonWith(root =>
        {
            root["design"]!["factors"]![0]!["levels"] = new JsonArray([.. levels.Select(level => JsonValue.Create(level))]);
            root["results"]!["standardClone"] = "KT-1";
            root["plots"] = new JsonArray([.. levels.SelectMany(level => new[] { "1", "2" }.SelectMany(block => new[] { "120", "240" }.Select(nitrogen =>
                new JsonObject
                {
                    ["plot"] = $"{block}-{level}-{nitrogen}",
                    ["block"] = block,
                    ["bay"] = "B1",
                    ["levels"] = new JsonObject { ["clone"] = level, ["nitrogen"] = nitrogen },
                })))]);
        });

        var fault = Assert.Single(PlanDocument.Parse(json, SpecExample.Name).Faults);

        Assert.Equal("2400 plots", fault.Found);
    }

    private static void SplitWithoutMainPlot(JsonObject root)
    {
        PlanDocumentTests.MakeSplitPlot(root);
        root["plots"]![3]!.AsObject().Remove("mainPlot");
    }

    private static void SplitWithoutFactor(JsonObject root)
    {
        PlanDocumentTests.MakeSplitPlot(root);
        root["design"]!.AsObject().Remove("mainPlot");
    }

    private static void SplitMixed(JsonObject root)
    {
        PlanDocumentTests.MakeSplitPlot(root);
        root["plots"]![2]!["mainPlot"] = "1-240";
    }

    private static void ReservedFactor(JsonObject root)
    {
        root["design"]!["factors"]![1]!["name"] = "bay";
        foreach (var plot in root["plots"]!.AsArray())
        {
            var levels = plot!["levels"]!.AsObject();
            levels["bay"] = levels["nitrogen"]!.DeepClone();
            levels.Remove("nitrogen");
        }
    }

    private static void PullBeforeHarvest(JsonObject root)
    {
        root["pulls"]![0]!["opens"] = "2026-09-01";
    }

    private static void ZeroRepeatability(JsonObject root)
    {
        root["repeatability"]![0]!["constant"] = 0;
        root["repeatability"]![0]!["relative"] = 0;
    }
}
