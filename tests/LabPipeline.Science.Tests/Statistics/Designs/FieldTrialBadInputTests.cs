using LabPipeline.Science.Statistics.Designs;

namespace LabPipeline.Science.Tests.Statistics.Designs;

public sealed class FieldTrialBadInputTests
{
    [Fact]
    public void Analyse_WhenThereIsOneBlock_IsRefused() =>
        Refuses(TrialRows.SeedRateDesign, TrialRows.SeedRates().Where(row => row.Block == "R1"), "1 block(s)");

    [Fact]
    public void Analyse_WhenAValueIsNotFinite_NamesThePlot() =>
        Refuses(TrialRows.SeedRateDesign, TrialRows.SeedRates().Select((row, index) => index == 3 ? row with { Value = double.NaN } : row), "Plot P3: Found NaN");

    [Fact]
    public void Analyse_WhenAPlotHasTwoValuesAtOnePull_IsRefused() =>
        Refuses(TrialRows.StorageDesign(), TrialRows.Storage().Append(TrialRows.Storage()[0]), "2 values at pull harvest");

    [Fact]
    public void Analyse_WhenALevelIsNotInThePlan_IsRefused() =>
        Refuses(TrialRows.SeedRateDesign, TrialRows.SeedRates().Select(row => row with { Levels = new Dictionary<string, string> { ["rate"] = "90" } }), "found level '90'");

    [Fact]
    public void Analyse_WhenAFactorIsMissingFromARow_IsRefused() =>
        Refuses(TrialRows.SeedRateDesign, TrialRows.SeedRates().Select(row => row with { Levels = new Dictionary<string, string>() }), "has no level of rate");

    [Fact]
    public void Analyse_WhenASplitPlotHasNoMainPlots_IsRefused() =>
        Refuses(TrialRows.OatDesign, TrialRows.Oats().Select(row => row with { MainPlot = null }), "has no main plot");

    [Fact]
    public void Analyse_WhenAMainPlotHoldsTwoTreatments_IsRefused() =>
        Refuses(TrialRows.OatDesign, TrialRows.Oats().Select(row => row with { MainPlot = row.Block }), "expected one treatment a main plot");

    [Fact]
    public void Analyse_WhenAPlotChangesItsBlock_IsRefused() =>
        Refuses(TrialRows.StorageDesign(), TrialRows.Storage().Select((row, index) => index == 1 ? row with { Block = "B4" } : row), "differ in block");

    [Fact]
    public void Analyse_WhenAPullIsUnknown_IsRefused() =>
        Refuses(TrialRows.StorageDesign(), TrialRows.Storage().Select(row => row with { Pull = "summer" }), "found pull 'summer'");

    [Fact]
    public void Analyse_WhenTheDesignStatesNoPulls_RefusesRowsThatHaveThem() =>
        Refuses(TrialRows.StorageDesign() with { Pulls = [] }, TrialRows.Storage(), "states no pulls");

    [Fact]
    public void Analyse_WhenALogMeetsZero_NamesThePlot() =>
        Refuses(TrialRows.SeedRateDesign with { Scale = ResponseScale.Log() }, TrialRows.SeedRates().Select((row, index) => index == 0 ? row with { Value = 0 } : row), "Plot P0: Found 0");

    [Fact]
    public void Analyse_WhenTheDesignContradictsItself_IsRefused()
    {
        Refuses(TrialRows.SeedRateDesign with { MainPlotFactors = ["rate"] }, TrialRows.SeedRates(), "layout RandomisedBlocks with 1");
        Refuses(TrialRows.OatDesign with { MainPlotFactors = [] }, TrialRows.Oats(), "layout SplitPlot with 0");
        Refuses(TrialRows.OatDesign with { MainPlotFactors = ["water"] }, TrialRows.Oats(), "found main-plot factor 'water'");
        Refuses(TrialRows.SeedRateDesign with { Factors = [] }, TrialRows.SeedRates(), "no treatment factor");
        Refuses(TrialRows.SeedRateDesign with { Factors = [new TreatmentFactor("block", ["a", "b"])] }, TrialRows.SeedRates(), "named 'block'");
        Refuses(TrialRows.StorageDesign() with { Pulls = [new PullDay("harvest", 0), new PullDay("winter", 0)] }, TrialRows.Storage(), "different names and days");
        Refuses(TrialRows.SeedRateDesign with { Factors = [new TreatmentFactor("rate", ["25"])] }, TrialRows.SeedRates().Where(row => row.Levels["rate"] == "25"), "1 level(s)");
    }

    /// <summary>What cannot be had is said in the tables; only rows that contradict the design are refused.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Analyse_WhateverPlotsAreMissing_RefusesNothingButASingleBlock(bool split)
    {
        var random = new Random(7);
        var design = TrialRows.StorageDesign(split) with { Pulls = [] };
        var rows = TrialRows.Storage().Where(row => row.Pull == "winter").Select(row => row with { Pull = null }).ToList();
        for (var round = 0; round < 100; round++)
        {
            var kept = rows.Where(_ => random.Next(100) > round).ToList();
            if (kept.Select(row => row.Block).Distinct().Count() > 1)
            {
                Assert.Equal(kept.Count, Assert.Single(FieldTrialAnalysis.Analyse(design, kept).Pulls).Plots);
            }
        }
    }

    [Fact]
    public void Analyse_WhenAllValuesAreEqual_TestsNothing()
    {
        var result = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(split: true), [.. TrialRows.Storage().Select(row => row with { Value = 7 })]);

        Assert.All(result.Pulls.SelectMany(pull => pull.Anova.Rows), row => Assert.Null(row.F));
        Assert.All(result.Repeated!.SplitInTime!.Rows, row => Assert.Null(row.F));
        Assert.All(result.Repeated.Candidates, candidate => Assert.Contains("all values are equal", candidate.NotFitted, StringComparison.Ordinal));
        Assert.Null(result.Repeated.Model);
        Assert.Empty(result.Repeated.Corrected);
    }

    private static void Refuses(FieldTrialDesign design, IEnumerable<PlotMean> rows, string message)
    {
        var fault = Assert.ThrowsAny<ArgumentException>(() => FieldTrialAnalysis.Analyse(design, [.. rows]));

        Assert.Contains(message, fault.Message, StringComparison.OrdinalIgnoreCase);
    }
}
