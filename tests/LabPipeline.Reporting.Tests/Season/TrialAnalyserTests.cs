using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Data;
using LabPipeline.Reporting.Season.Keeping;

namespace LabPipeline.Reporting.Tests.Season;

public sealed class TrialAnalyserTests
{
    [Fact]
    public void Season_WhenWhole_HasEveryTable()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder().Build());

        var glucose = analysis.Find(ResponseCatalogue.Glucose)!;
        Assert.All(glucose.Pulls, pull =>
        {
            Assert.Null(pull.WhyNone);
            Assert.Equal(6, pull.MeansOf("clone:nitrogen")!.Rows.Count);
            Assert.All(pull.MeansOf("clone")!.Rows, row => Assert.NotEmpty(row.Letters));
            Assert.Equal(2, pull.AgainstStandard!.Comparisons.Count);
            Assert.NotNull(pull.CoefficientOfVariation);
        });
        Assert.Null(glucose.Season!.WhyNone);
        Assert.Equal("natural logarithm", glucose.ScaleStatement);
        Assert.Equal(3, analysis.Keeping.Single(table => table.Limit.Value == 0.1m).Clones.Count);
    }

    [Fact]
    public void GeometricMean_OfABalancedPull_IsTheExponentialOfTheMeanLogarithm()
    {
        var data = new SeasonBuilder().Build();

        var row = TrialAnalyser.Analyse(data).Find(ResponseCatalogue.Glucose)!.Pulls[1].MeansOf("clone")!.Find("KT-2")!;

        var plots = data.Plots.Where(plot => plot.Levels["clone"] == "KT-2").Select(plot => plot.PlotCode).ToHashSet();
        var barcodes = data.Samples.Where(sample => sample.PullNo == 2 && plots.Contains(sample.PlotCode)).Select(sample => sample.Barcode).ToHashSet();
        var logs = data.Results.Where(result => result.QuantityId == 60 && barcodes.Contains(result.Barcode)).Select(result => Math.Log((double)result.Value));
        Assert.Equal(Math.Exp(logs.Average()), row.Back!.Value, 12);
        Assert.Equal(8, row.N);
    }

    [Fact]
    public void Season_WithOneBlock_SaysThereIsNoError()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder { Blocks = 1 }.Build());

        Assert.All(analysis.Responses.SelectMany(one => one.Pulls), pull => Assert.Contains("no error to test against", pull.WhyNone!, StringComparison.Ordinal));
        Assert.All(analysis.Keeping, table => Assert.NotNull(table.WhyNone));
        Assert.All(analysis.Responses.SelectMany(one => one.Pulls), pull => Assert.NotEmpty(pull.Raw));
    }

    [Fact]
    public void Season_WithAWholePullMissing_AnalysesTheOthers()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder { MissingPulls = [2] }.Build());

        var glucose = analysis.Find(ResponseCatalogue.Glucose)!;
        Assert.Equal("no plot was measured at this pull", glucose.Pulls[1].WhyNone);
        Assert.Null(glucose.Pulls[0].WhyNone);
        Assert.Equal([30, 150], glucose.Season!.Clones[0].Points.Select(point => point.Day));
    }

    [Fact]
    public void Season_WithOneBlockMeasuredAtAPull_SaysSoThereAndAnalysesTheOthers()
    {
        var analysis = TrialAnalyser.Analyse(MeasuredOnly(sample => sample.PullNo != 2 || sample.PlotCode.StartsWith('1')));

        var glucose = analysis.Find(ResponseCatalogue.Glucose)!;
        Assert.Contains("1 block(s)", glucose.Pulls[1].WhyNone!, StringComparison.Ordinal);
        Assert.Equal(6, glucose.Pulls[1].Raw.Count);
        Assert.Null(glucose.Pulls[0].WhyNone);
        Assert.Null(glucose.Season!.WhyNone);
    }

    [Fact]
    public void Season_WithOneBlockMeasuredThroughout_SaysThatThereIsNoAnalysis()
    {
        var analysis = TrialAnalyser.Analyse(MeasuredOnly(sample => sample.PlotCode.StartsWith('1')));

        var season = analysis.Find(ResponseCatalogue.Glucose)!.Season!;
        Assert.Contains("1 block(s)", season.WhyNone!, StringComparison.Ordinal);
        Assert.Null(season.Analysis);
        Assert.All(analysis.Keeping, table => Assert.NotNull(table.WhyNone));
    }

    [Fact]
    public void Season_WithEveryValueBelowItsLimit_SaysSoAndAnalysesTheRest()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder { AllBelowLimit = true }.Build());

        Assert.All(analysis.Find(ResponseCatalogue.Glucose)!.Pulls, pull => Assert.Contains("below the quantitation limit", pull.WhyNone!, StringComparison.Ordinal));
        Assert.Null(analysis.Find(ResponseCatalogue.HunterL)!.Pulls[0].WhyNone);
        Assert.NotNull(analysis.Keeping.Single(table => table.Limit.Value == 0.1m).WhyNone);
        Assert.NotNull(analysis.SugarColour!.Season.WhyNone);
    }

    [Fact]
    public void Season_WithOneClone_StillComparesTheOtherTreatments()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder { Clones = ["KT-1"] }.Build());

        var pull = analysis.Find(ResponseCatalogue.Glucose)!.Pulls[0];
        Assert.Equal("the trial has one clone only", pull.WhyNotAgainstStandard);
        Assert.Equal(2, pull.MeansOf("nitrogen")!.Rows.Count);
        Assert.Equal(["clone"], analysis.Model.SingleLevel);
    }

    [Fact]
    public void Season_WithOneTreatmentAltogether_SaysThereIsNothingToCompare()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder { Clones = ["KT-1"], Rates = ["100"] }.Build());

        Assert.Contains("nothing to compare", analysis.Find(ResponseCatalogue.Glucose)!.Pulls[0].WhyNone!, StringComparison.Ordinal);
    }

    [Fact]
    public void Keeping_OfAClonePastItsLimit_LiesBetweenThePullsThatBracketIt()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder().Build());

        var clone = analysis.Keeping.Single(table => table.Limit.Value == 0.1m).Clones.Single(time => time.Label == "KT-3");
        Assert.Equal(KeepingState.Crossed, clone.State);
        Assert.InRange(clone.Day!.Value, 30, 90);
        Assert.True((clone.Earliest ?? clone.FirstDay) <= clone.Day && clone.Day <= clone.Latest, $"{clone}");
    }

    /// <summary>A season of four blocks that holds results of some samples only.</summary>
    private static SeasonData MeasuredOnly(Func<SampleFact, bool> isMeasured)
    {
        var data = new SeasonBuilder().Build();
        var measured = data.Samples.Where(isMeasured).Select(sample => sample.Barcode).ToHashSet();
        return data with { Results = [.. data.Results.Where(result => measured.Contains(result.Barcode))] };
    }
}
