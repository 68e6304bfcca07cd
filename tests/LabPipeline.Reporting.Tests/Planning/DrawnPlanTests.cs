using LabPipeline.Reporting.Planning;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Tests.Planning;

public sealed class DrawnPlanTests
{
    private const double Improbable = 1e-6;

    [Fact]
    public void Of_AnOutline_GivesADocumentThatThePlanReaderAccepts()
    {
        var drawn = DrawnPlan.Of(OutlineExample.Outline(), 20260115);
        var read = PlanDocument.Parse(drawn.Document, "plan.json");

        Assert.Empty(read.Faults);
        Assert.Equal(24, read.Plan!.Plots.Count);
        Assert.Equal(20260115, read.Plan.Design.Seed);
        Assert.Equal(["101", "102", "103", "104", "105", "106"], read.Plan.Plots.Take(6).Select(plot => plot.Code));
        Assert.Equal(["B1", "B1", "B2", "B2"], read.Plan.Plots.GroupBy(plot => plot.Block).Select(block => Assert.Single(block.Select(plot => plot.BayCode).Distinct())));
    }

    /// <summary>
    /// The layout is a promise: this one must come out on every machine and version. Expected: computed by a second implementation of the page
    /// docs/specs/planning.md in another language (FNV-1a, PCG-XSH-RR 64/32, shuffle from the last place down).
    /// </summary>
    [Fact]
    public void Of_AStatedSeed_GivesTheSameLayoutForEver()
    {
        var plots = OutlineExample.Plan(20260115).Plots.Where(plot => plot.Block is "1" or "4");

        Assert.Equal(
            "101 KT-127/200, 102 KT-118/120, 103 KT-118/200, 104 KT-127/120, 105 KT-104/120, 106 KT-104/200, "
            + "401 KT-127/120, 402 KT-104/200, 403 KT-127/200, 404 KT-118/120, 405 KT-118/200, 406 KT-104/120",
            string.Join(", ", plots.Select(plot => $"{plot.Code} {plot.Levels["clone"]}/{plot.Levels["nitrogen"]}")));
    }

    [Fact]
    public void Of_AFurtherBlock_LeavesTheOtherBlocksAsTheyWere()
    {
        var four = OutlineExample.Plan();
        var five = OutlineExample.Plan(change: root => root["design"]!["blocks"] = new System.Text.Json.Nodes.JsonArray("1", "2", "3", "4", "5"));

        Assert.Equal(four.Plots.Select(Describe), five.Plots.Take(24).Select(Describe));
    }

    [Fact]
    public void Of_ASplitPlot_KeepsMainPlotsWholeAndDrawsWithinEach()
    {
        var plan = OutlineExample.Plan(change: OutlineExample.AsSplitPlot);

        Assert.All(plan.Plots.GroupBy(plot => plot.MainPlot), main =>
        {
            Assert.Single(main.Select(plot => plot.Levels["nitrogen"]).Distinct());
            Assert.Equal(3, main.Select(plot => plot.Levels["clone"]).Distinct().Count());
        });
        Assert.Equal(["W11", "W12", "W21", "W22", "W31", "W32", "W41", "W42"], plan.Plots.Select(plot => plot.MainPlot!).Distinct());
        Assert.True(plan.Plots.GroupBy(plot => plot.MainPlot).Select(main => string.Join(',', main.Select(plot => plot.Levels["clone"]))).Distinct().Count() > 1);
    }

    [Fact]
    public void Of_ManySeeds_PutsEveryTreatmentOnEveryPlotEquallyOften()
    {
        const int seeds = 3000;
        var outline = OutlineExample.Outline();
        var counts = Enumerable.Range(1, seeds)
            .SelectMany(seed => DrawnPlan.Of(outline, seed).Plan.Plots.Take(6).Select(plot => (plot.Code, plot.Levels["clone"], plot.Levels["nitrogen"])))
            .CountBy(cell => cell)
            .Select(pair => pair.Value)
            .ToList();

        Assert.Equal(36, counts.Count);
        // A 6 x 6 table with both margins fixed by design: 25 degrees of freedom.
        var expected = seeds / 6.0;
        Assert.True(ChiSquared.Upper(counts.Sum(count => (count - expected) * (count - expected) / expected), 25) > Improbable);
    }

    [Fact]
    public void Of_DaysAfterHarvest_BecomeDatesAndDatesStay()
    {
        var pulls = OutlineExample.Plan().Pulls;

        Assert.Equal((new DateOnly(2026, 10, 5), new DateOnly(2026, 10, 5), new DateOnly(2026, 10, 9)), (pulls[0].DueOn, pulls[0].OpensOn, pulls[0].ClosesOn));
        Assert.Equal(new DateOnly(2026, 11, 2), pulls[1].DueOn);
        Assert.Equal(new DateOnly(2027, 2, 1), pulls[2].DueOn);
    }

    private static string Describe(TrialPlot plot) => $"{plot.Code} {plot.Block} {string.Join('/', plot.Levels.Values)}";
}
