using LabPipeline.Science.Statistics.Designs;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;
using LabPipeline.Science.Tests.Statistics.LinearModels;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Designs;

public sealed class FieldTrialAnalysisTests
{
    /// <summary>Gomez and Gomez 1984 p. 26 through the whole entry: table, means, CV, SED.</summary>
    [Fact]
    public void Analyse_WhenRandomisedBlocks_AgreesWithPublishedTables()
    {
        var pull = FieldTrialAnalysis.Analyse(TrialRows.SeedRateDesign, TrialRows.SeedRates()).Pulls.Single();

        CheckData.SameLine(CheckData.AnovaRows("gomez_seedrate", "yield").Single(row => row.Text("term") == "r"), pull.Anova.Find("rate"));
        CheckData.Near(6.70425774562, pull.CoefficientOfVariation);
        CheckData.Near(235.115302683, pull.MeansOf("rate").Difference("25", "50").StandardError); // G_sed_lsd.csv
        Assert.Equal(24, pull.Diagnostics.Count);
        CheckData.Near(235.115302683, Assert.Single(pull.NextSeason).StandardErrorOfDifference(4));
    }

    [Fact]
    public void Analyse_WhenAPlotIsMissing_UsesExactLeastSquares()
    {
        var pull = FieldTrialAnalysis.Analyse(TrialRows.SeedRateDesign,
            [.. TrialRows.SeedRates().Where(row => !(row.Block == "R2" && row.Levels["rate"] == "100"))]).Pulls.Single();

        CheckData.Near(ReferenceTable.Load("G_missing_plots.csv").Find("quantity", "treatment F (5,14 df)").Number("value"), pull.Anova.Find("rate").F);
        Assert.Contains("type III", pull.Anova.Method, StringComparison.Ordinal);
    }

    [Fact]
    public void Analyse_WhenSplitPlot_AgreesWithPublishedStrata()
    {
        var pull = FieldTrialAnalysis.Analyse(TrialRows.OatDesign, TrialRows.Oats()).Pulls.Single();

        var variety = pull.Anova.Find("variety", "main plot");
        CheckData.SameLine(CheckData.AnovaRows("yates_oats", "Y ~ V*N + Error(B/V)", "B:V").Single(row => row.Text("term") == "V"), variety);
        Assert.Equal("main plot residual", variety.TestedAgainst);
        CheckData.Near(106.061805556, pull.Components.Single(component => component.Unit == "main plot").Variance); // G_variance_components.csv
        Assert.Equal(["main plot", "Within"], pull.NextSeason.Select(entry => entry.Error));
    }

    [Fact]
    public void Analyse_WhenASubplotIsMissing_UsesTheMixedModel()
    {
        var pull = FieldTrialAnalysis.Analyse(TrialRows.OatDesign,
            [.. TrialRows.Oats().Where(row => !(row.MainPlot == "III/Victory" && row.Levels["nitrogen"] == "0.4cwt"))]).Pulls.Single();

        var row = pull.Anova.Find("variety");
        CheckData.Near(1.59615084334, row.F, 1e-5); // G_anova_tables.csv, lmer with Kenward-Roger
        CheckData.Near(9.99518591527, row.DenominatorDf, 1e-5);
        CheckData.Near(107.335739346, pull.MeansOf("variety:nitrogen").Find("Victory:0.4cwt").Value, 1e-5); // G_means.csv
    }

    [Fact]
    public void Analyse_WhenASubplotIsMissingAndAllValuesAreEqual_SaysOfEachTermWhyItIsNotTested()
    {
        var pull = FieldTrialAnalysis.Analyse(TrialRows.OatDesign, [.. TrialRows.Oats().Skip(1).Select(row => row with { Value = 7 })]).Pulls.Single();

        Assert.Equal("No analysis", pull.Anova.Method);
        Assert.Empty(pull.Anova.Rows);
        Assert.Equal([("variety", 2), ("nitrogen", 3), ("variety:nitrogen", 6)], pull.Anova.NotEstimable.Select(lost => (lost.Term, lost.LostDf)));
        Assert.All(pull.Anova.NotEstimable, lost => Assert.Contains("all values are equal", lost.Reason, StringComparison.Ordinal));
        Assert.Empty(pull.Means);
    }

    /// <summary>Treatments lie in each block in the same proportions, so least squares is exact; blocks of two sizes have no component by moments.</summary>
    [Fact]
    public void Analyse_WhenOneBlockIsTwiceAsLarge_TestsTheTermsAndGivesNoComponents()
    {
        var oats = TrialRows.Oats();
        var twice = oats.Where(row => row.Block == "I").Select(row => row with { Plot = row.Plot + "b", MainPlot = row.MainPlot + "b", Value = row.Value + (row.Plot.Length % 2) + 3 });

        var pull = FieldTrialAnalysis.Analyse(TrialRows.OatDesign, [.. oats, .. twice]).Pulls.Single();

        Assert.Empty(pull.Components);
        Assert.Empty(pull.Anova.NotEstimable);
        Assert.NotNull(pull.Anova.Find("variety", "main plot").F);
        Assert.NotNull(pull.MeansOf("variety").Find("Victory").Value);
    }

    /// <summary>With nothing missing, compound symmetry by REML is the split-plot in time: same F, same df (theory of balanced designs).</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Analyse_WhenPullsAreComplete_StrataAndMixedModelAgree(bool split)
    {
        var design = TrialRows.StorageDesign(split) with { Structures = [CovarianceStructure.CompoundSymmetry] };

        var repeated = FieldTrialAnalysis.Analyse(design, TrialRows.Storage(split ? 5 : 11)).Repeated!;

        Assert.Null(repeated.WhyNoSplitInTime);
        foreach (var row in repeated.SplitInTime!.Rows.Where(row => row.F is not null))
        {
            CheckData.Near(row.F!.Value, repeated.Tests!.Find(row.Term).F, 1e-5);
            CheckData.Near(row.DenominatorDf!.Value, repeated.Tests.Find(row.Term).DenominatorDf, 1e-4);
        }

        Assert.Equal(["pull", "clone:pull", "rate:pull", "clone:rate:pull"], repeated.Corrected.Select(test => test.Term));
        Assert.InRange(repeated.Sphericity!.GreenhouseGeisser, 0.5, 1);
        Assert.Equal(18, repeated.MeansOf("clone:rate:pull").Cells.Count);
    }

    [Fact]
    public void Analyse_WhenPullsAreRepeated_PicksTheSmallestAic()
    {
        var result = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(), TrialRows.Storage());

        var repeated = result.Repeated!;
        Assert.Equal(3, result.Pulls.Count);
        Assert.Equal(3, repeated.Candidates.Count);
        Assert.Equal(repeated.Candidates.MinBy(candidate => candidate.Aic)!.Structure, repeated.Model!.Structure);
        Assert.Contains("clone (2) x rate (3) in randomised complete blocks, 3 pulls", result.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void Analyse_WhenOnePlotMissesAPull_LeavesTheStrataAndKeepsTheModel()
    {
        var rows = TrialRows.Storage()[1..];

        var result = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(), rows);

        Assert.Null(result.Repeated!.SplitInTime);
        Assert.Contains("missing", result.Repeated.WhyNoSplitInTime, StringComparison.Ordinal);
        Assert.Null(result.Repeated.Sphericity);
        Assert.Equal(7, result.Repeated.Tests!.Rows.Count);
        var means = result.Repeated.MeansOf("clone:rate:pull");
        Assert.Equal(3, means.Find("PX1:low:harvest").Count);
        Assert.True(means.Difference("PX1:low:harvest", "PX2:low:harvest").StandardError > means.Difference("PX1:mid:harvest", "PX2:mid:harvest").StandardError);
    }

    [Fact]
    public void Analyse_WhenATreatmentMissesAWholePull_SaysWhatCannotBeEstimated()
    {
        var rows = TrialRows.Storage().Where(row => !(row.Pull == "spring" && row.Levels["clone"] == "PX1" && row.Levels["rate"] == "low")).ToArray();

        var result = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(), rows);

        var tests = result.Repeated!.Tests!;
        Assert.Contains(tests.NotEstimable, entry => entry.Term == "clone:rate:pull");
        Assert.DoesNotContain(tests.Rows, row => row.Term == "clone:rate:pull");
        Assert.Null(result.Repeated.MeansOf("clone:rate:pull").Find("PX1:low:spring").Value);
        Assert.NotNull(result.Repeated.MeansOf("clone:rate:pull").Find("PX1:low:winter").Value);
        Assert.Contains(result.Pulls.Single(pull => pull.Pull == "spring").Anova.NotEstimable, entry => entry.Term == "clone:rate");
        Assert.Empty(result.Pulls.Single(pull => pull.Pull == "winter").Anova.NotEstimable);
    }

    [Fact]
    public void Analyse_WhenLaterPullsAreStillToCome_UsesThoseTaken()
    {
        var result = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(), [.. TrialRows.Storage().Where(row => row.Pull == "harvest")]);

        Assert.Equal("harvest", Assert.Single(result.Pulls).Pull);
        Assert.Null(result.Repeated);
    }

    [Fact]
    public void Analyse_WhenTheScaleIsLog_ComparesRatios()
    {
        var rows = TrialRows.SeedRates();
        var design = TrialRows.SeedRateDesign with { Scale = ResponseScale.Log() };

        var pull = FieldTrialAnalysis.Analyse(design, rows).Pulls.Single();

        var geometric = Math.Exp(rows.Where(row => row.Levels["rate"] == "25").Average(row => Math.Log(row.Value)));
        CheckData.Near(geometric, design.Scale.Back(pull.MeansOf("rate").Find("25")), 1e-10);
        Assert.Null(pull.CoefficientOfVariation);
    }

    [Fact]
    public void Analyse_WhenRowsAreReordered_ChangesNothing()
    {
        var rows = TrialRows.Storage();
        var before = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(), rows).Repeated!;
        Array.Reverse(rows);

        var after = FieldTrialAnalysis.Analyse(TrialRows.StorageDesign(), rows).Repeated!;

        foreach (var row in before.SplitInTime!.Rows)
        {
            CheckData.Near(row.SumOfSquares!.Value, after.SplitInTime!.Find(row.Term, row.Stratum).SumOfSquares);
        }

        CheckData.Near(before.Model!.LogLikelihood, after.Model!.LogLikelihood);
    }
}
