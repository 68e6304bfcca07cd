using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Science.Barcodes;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

public sealed class PlanSamplesTests
{
    private const string MarkCharacters = "0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

    [Fact]
    public void Of_TheExample_NumbersEveryPlotAtEveryPull()
    {
        var samples = PlanSamples.Of(SpecExample.Plan);

        Assert.Equal(24, samples.Count);
        Assert.All(samples, sample => Assert.StartsWith("26EX", sample.Barcode.Text, StringComparison.Ordinal));
        Assert.All(samples, sample => Assert.Equal(sample.Pull.Number, sample.RunningNumber / 1000));
        Assert.Equal(["101", "102", "103", "104", "201", "202", "203", "204"], samples.Take(8).Select(sample => sample.Plot.Code));
    }

    [Fact]
    public void Of_AnExtendedPlan_KeepsEveryBarcode()
    {
        var longer = SpecExample.PlanWith(root =>
        {
            root["pulls"]!.AsArray().Add(System.Text.Json.Nodes.JsonNode.Parse("""{ "number": 4, "due": "2027-05-03", "opens": "2027-05-03", "closes": "2027-05-07" }"""));
            root["design"]!["blocks"]!.AsArray().Add("3");
            root["design"]!["incomplete"] = "Block 3 has one plot so far.";
            root["plots"]!.AsArray().Add(System.Text.Json.Nodes.JsonNode.Parse("""{ "plot": "301", "block": "3", "bay": "B1", "levels": { "clone": "KT-104", "nitrogen": "120" } }"""));
        });

        var before = PlanSamples.Of(SpecExample.Plan).ToDictionary(sample => (sample.Pull.Number, sample.Plot.Code), sample => sample.Barcode);
        var after = PlanSamples.Of(longer).ToDictionary(sample => (sample.Pull.Number, sample.Plot.Code), sample => sample.Barcode);

        Assert.Equal(36, after.Count);
        Assert.All(before, pair => Assert.Equal(pair.Value, after[pair.Key]));
    }

    [Property(MaxTest = 50)]
    public Property Of_AnyMarkAndPulls_GivesDifferentBarcodesThatCheck() =>
        Prop.ForAll(
            Gen.Choose(2000, 2099).SelectMany(season =>
                Gen.Elements(MarkCharacters.ToCharArray()).ArrayOf(3).SelectMany(mark =>
                    Gen.Choose(1, PlanSamples.HighestPull).Select(pull => (season, mark: new string(mark), pull)))).ToArbitrary(),
            drawn =>
            {
                var plan = Draw(drawn.season, drawn.mark, drawn.pull);
                var samples = PlanSamples.Of(plan);
                return samples.Count == PlanSamples.MostPlots * plan.Pulls.Count
                    && samples.Select(sample => sample.Barcode.Text).Distinct(StringComparer.Ordinal).Count() == samples.Count
                    && samples.All(sample => Mod37x36.Verify(sample.Barcode.Text) && !"IOQ".Contains(sample.Barcode.Check, StringComparison.Ordinal))
                    && samples.All(sample => sample.RunningNumber / 1000 == sample.Pull.Number);
            });

    /// <summary>The example with as many plots as a plan may have and two pulls next to each other.</summary>
    private static TrialPlan Draw(int season, string mark, int pull)
    {
        var example = SpecExample.Plan;
        return example with
        {
            Season = season,
            Mark = mark,
            Plots = [.. Enumerable.Range(1, PlanSamples.MostPlots).Select(number => example.Plots[0] with { Code = $"{number}" })],
            Pulls = [example.Pulls[0] with { Number = Math.Max(1, pull - 1) }, .. pull == 1 ? Array.Empty<TrialPull>() : [example.Pulls[1] with { Number = pull }]],
        };
    }
}
