using LabPipeline.Reporting.Figures;
using LabPipeline.Reporting.Report;
using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Tests.Season;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse.Controls;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Reporting.Tests.Report;

public sealed class QualityTests
{
    private static readonly ReportStamp Stamp = new(null, null, "LabPipeline test");

    [Fact]
    public void Controls_WithoutStoredLimits_AreShownAndJudgedByNothing()
    {
        var data = new SeasonBuilder().Build();

        Assert.Equal(25, Assert.Single(ControlSeries.Of(data)).Unjudged);
        Assert.Contains("no limits decided", Html(data), StringComparison.Ordinal);
        Assert.Contains("judged by nothing", Html(data), StringComparison.Ordinal);
    }

    /// <summary>The controls of the builder are measured hourly and lie from 0.05 to 0.0508; the second limits shut out what the first let in.</summary>
    [Fact]
    public void Controls_WithLimitsThatChanged_AreHeldAgainstThoseInForceThen()
    {
        var first = new SeasonBuilder().Build().Controls[0].MeasuredAt!.Value;
        var data = new SeasonBuilder { ControlLimits = [Limits(1, first, 0.040m, 0.060m), Limits(2, first.AddHours(20), 0.040m, 0.0503m)] }.Build();

        var series = Assert.Single(ControlSeries.Of(data));

        Assert.Equal(0, series.Unjudged);
        Assert.Equal(data.Controls.Skip(20).Count(fact => fact.Value > 0.0503m), series.Beyond);
        Assert.True(series.Beyond > 0);
        Assert.Contains("new bottle", Html(data), StringComparison.Ordinal);
    }

    [Fact]
    public void Controls_MeasuredBeforeAnyLimits_AreCountedAsSuch()
    {
        var first = new SeasonBuilder().Build().Controls[0].MeasuredAt!.Value;

        Assert.Equal(5, Assert.Single(ControlSeries.Of(new SeasonBuilder { ControlLimits = [Limits(1, first.AddHours(5), 0.040m, 0.060m)] }.Build())).Unjudged);
    }

    [Fact]
    public void Means_ThatRestOnResultsInDoubt_AreMarkedAndGivenWithoutThem()
    {
        var data = new SeasonBuilder { DoubtfulPlots = ["101", "102"] }.Build();

        var pull = TrialAnalyser.Analyse(data).Find(ResponseCatalogue.Glucose)!.Pulls[0];

        Assert.Equal((24, 22), (pull.Plots, pull.WithoutDoubtful!.Plots));
        Assert.Null(TrialAnalyser.Analyse(data).Find(ResponseCatalogue.Glucose)!.Pulls[1].WithoutDoubtful);
        var page = Html(data);
        Assert.Matches("</sup>†</td>", page);
        Assert.Contains("Glucose: means of clone with and without the results in doubt", page, StringComparison.Ordinal);
        Assert.Contains("2 results of glucose", page, StringComparison.Ordinal);
        Assert.DoesNotMatch("</sup>†</td>", Html(new SeasonBuilder().Build()));
    }

    [Theory]
    [InlineData("done,done", "Done")]
    [InlineData("done,late", "Late")]
    [InlineData("missing,missing", "Missing")]
    [InlineData("done,missing", "InPart")]
    [InlineData("done,excluded", "Excluded")]
    [InlineData("expected,expected", "Expected")]
    [InlineData("done,expected", "InPart")]
    public void GridCell_OfSeveralMeasurements_SumsThemUp(string states, string expected) =>
        Assert.Equal(expected, GridStates.Of(states.Split(',')).ToString());

    [Fact]
    public void Grid_OfAPlanThatExpectsNothing_IsLeftOut() => Assert.Null(GridFigure.Draw(new SeasonBuilder().Build() with { Grid = Array.Empty<SeasonGridCell>() }));

    private static string Html(LabPipeline.Reporting.Season.Data.SeasonData data) => SeasonReport.Html(ReportContent.Of(data, Stamp));

    private static ControlLimitRow Limits(int version, DateTimeOffset from, decimal lower, decimal upper) => new()
    {
        Instrument = "analyser 1",
        Material = "low",
        QuantityId = QuantityCatalogue.GlucoseInExtract.Id,
        Version = version,
        Kind = ControlLimitKinds.Target,
        Centre = (lower + upper) / 2,
        Lower = lower,
        Upper = upper,
        InForceFrom = from,
        DecidedAt = from,
        DecidedBy = "lab manager",
        Why = "new bottle",
    };
}
