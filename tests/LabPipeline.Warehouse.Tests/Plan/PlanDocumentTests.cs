using System.Globalization;
using System.Text.Json.Nodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

public sealed class PlanDocumentTests
{
    [Fact]
    public void Parse_OfTheSpecificationsExample_GivesThePlan()
    {
        var plan = SpecExample.Plan;

        Assert.Equal("EX-NITRO-26", plan.Code);
        Assert.Equal(DesignKind.FactorialRcbd, plan.Design.Kind);
        Assert.Equal(new DateOnly(2026, 9, 16), plan.HarvestedOn);
        Assert.Equal(8, plan.Plots.Count);
        Assert.Equal(["2026-10-05", "2026-11-02", "2027-02-01"], plan.Pulls.Select(pull => pull.DueOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
        Assert.Equal(8.9m, plan.Bays.Single().SetPointCelsius);
        Assert.Equal(new SampleSize(10, 3, 2), plan.SampleSize);
        Assert.Equal("KT-118", plan.CloneOf(plan.Plots[1]));
        Assert.Equal("nitrogen 120 kg/ha", plan.TreatmentOf(plan.Plots[1]));
        Assert.Equal([1, 3], plan.Expected.Where(expected => expected.Quantity.Name == "weight_in_air").Select(expected => expected.PullNumber));
        Assert.Equal(3, plan.Expected.Count(expected => expected.Quantity.Name == "glucose_in_extract"));
        Assert.False(plan.Repeatability.Single().IsProvisional);
    }

    [Fact]
    public void Parse_OfPlotsInAFile_GivesTheSamePlots()
    {
        var json = SpecExample.JsonWith(root =>
        {
            root.Remove("plots");
            root["plotsFile"] = "plots.csv";
        });

        var fromFile = PlanDocument.Parse(json, SpecExample.Name, name => name == "plots.csv" ? SpecExample.PlotsCsv : null).Plan!;

        Assert.Equal(SpecExample.Plan.Plots.Select(Describe), fromFile.Plots.Select(Describe));
        Assert.Equal(SampleList.Of(SpecExample.Plan), SampleList.Of(fromFile));
    }

    [Fact]
    public void Parse_WhenThePlotsFileChanges_GivesAnotherHash()
    {
        var json = SpecExample.JsonWith(root =>
        {
            root.Remove("plots");
            root["plotsFile"] = "plots.csv";
        });

        var one = PlanDocument.Parse(json, SpecExample.Name, _ => SpecExample.PlotsCsv).Plan!;
        var other = PlanDocument.Parse(json, SpecExample.Name, _ => SpecExample.PlotsCsv + "\n").Plan!;

        Assert.NotEqual(one.Sha256, other.Sha256);
    }

    [Fact]
    public void Parse_OfTextThatIsNotJson_TellsThePlace()
    {
        var fault = Assert.Single(PlanDocument.Parse("{\n  \"schema\": 1,\n}", SpecExample.Name).Faults);

        Assert.StartsWith("plan.json, line 3", fault.Describe(SpecExample.Name), StringComparison.Ordinal);
    }

    [Fact]
    public void Parse_OfAnotherSchema_SaysNothingElse()
    {
        var json = SpecExample.JsonWith(root =>
        {
            root["schema"] = 2;
            root.Remove("trial");
        });

        var fault = Assert.Single(PlanDocument.Parse(json, SpecExample.Name).Faults);

        Assert.Equal(
            "plan.json, schema: found 2; expected 1. Use the version of the program the document was made for.", fault.Describe(SpecExample.Name));
    }

    [Fact]
    public void Parse_OfManyFaults_TellsThemAllAtOnce()
    {
        var json = SpecExample.JsonWith(root =>
        {
            root["trial"]!["timeZone"] = "Central Standard Time";
            root["trial"]!["mark"] = "QX";
            root["bays"]![0]!["setPointC"] = "8.9";
            root["plots"]![0]!["levels"]!["nitrogen"] = "400";
            root["pulls"]![1]!["opens"] = "2026-10-09";
            root["samples"]!["tubers"] = -10;
            root["expected"]![0]!["quantity"] = "glucoze";
            root["colour"] = "green";
        });

        var paths = PlanDocument.Parse(json, SpecExample.Name).Faults.Select(fault => fault.Path).Order(StringComparer.Ordinal);

        Assert.Equal(
            ["bays[0].setPointC", "colour", "expected[0].quantity", "plots[0]", "pulls[1].opens", "samples.tubers", "trial.mark", "trial.timeZone"], paths);
    }

    [Fact]
    public void Parse_WhenAMemberStandsTwice_IsRefused()
    {
        var json = SpecExample.Json.Replace("\"season\": 2026,", "\"season\": 2026, \"season\": 2027,", StringComparison.Ordinal);

        var fault = Assert.Single(PlanDocument.Parse(json, SpecExample.Name).Faults);

        Assert.Equal("trial.season", fault.Path);
    }

    [Fact]
    public void Parse_WhenABlockMissesATreatmentForAStatedReason_IsAccepted()
    {
        var plan = SpecExample.PlanWith(root =>
        {
            root["plots"]!.AsArray().RemoveAt(7);
            root["design"]!["incomplete"] = "Plot 204 drowned in July.";
        });

        Assert.Equal(7, plan.Plots.Count);
    }

    [Fact]
    public void Parse_OfASplitPlot_KeepsMainPlots()
    {
        var plan = SpecExample.PlanWith(MakeSplitPlot);

        Assert.Equal("nitrogen", plan.Design.MainPlotFactor);
        Assert.Equal("1-240", plan.Plots[0].MainPlot);
    }

    internal static void MakeSplitPlot(JsonObject root)
    {
        root["design"]!["kind"] = "split-plot";
        root["design"]!["mainPlot"] = "nitrogen";
        foreach (var plot in root["plots"]!.AsArray())
        {
            plot!["mainPlot"] = $"{plot["block"]}-{plot["levels"]!["nitrogen"]}";
        }
    }

    private static string Describe(TrialPlot plot) =>
        $"{plot.Code} {plot.Block} {plot.MainPlot} {plot.BayCode} {string.Join(' ', plot.Levels.Select(level => $"{level.Key}={level.Value}"))}";
}
