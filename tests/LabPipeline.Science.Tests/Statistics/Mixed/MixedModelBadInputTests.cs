using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.LinearModels;
using LabPipeline.Science.Statistics.Mixed;
using LabPipeline.Science.Tests.Statistics.LinearModels;

namespace LabPipeline.Science.Tests.Statistics.Mixed;

public sealed class MixedModelBadInputTests
{
    private static readonly string[] Plots = ["1", "1", "2", "2", "3", "3", "4", "4"];
    private static readonly double[] Days = [0, 30, 0, 30, 0, 30, 0, 30];
    private static readonly double[] Values = [1, 3, 2, 5, 4, 4, 3, 7];

    private static ModelData Data(double[] values) => new(values, [
        Factor.InOrderOfAppearance("plot", Plots),
        Factor.InOrderOfAppearance("day", [.. Days.Select(day => $"{day}")]),
        Factor.Of("block", ["A", "B"], ["A", "A", "A", "A", "A", "A", "A", "A"])]);

    private static RepeatedPulls Pulls(double[] days) => new(Term.Of("plot"), days, CovarianceStructure.CompoundSymmetry);

    [Fact]
    public void Fit_WhenARandomUnitOccursOnce_IsNotEstimable() =>
        Assert.Contains("only one such unit", Assert.Throws<NotEstimableException>(() => MixedModel.Fit(Data(Values), [Term.Of("day")], [Term.Of("block")])).Why, StringComparison.Ordinal);

    [Fact]
    public void Fit_WhenARandomUnitIsThePlotItself_IsNotEstimable() =>
        Assert.Contains("no larger than the plots", Assert.Throws<NotEstimableException>(() => MixedModel.Fit(Data(Values), [Term.Of("day")], [Term.Of("plot")], Pulls(Days))).Why, StringComparison.Ordinal);

    [Fact]
    public void Fit_WhenAllValuesAreEqual_IsNotEstimable() =>
        Assert.Contains("all values are equal", Assert.Throws<NotEstimableException>(() => MixedModel.Fit(Data([4, 4, 4, 4, 4, 4, 4, 4]), [Term.Of("day")], [Term.Of("plot")])).Why, StringComparison.Ordinal);

    [Fact]
    public void Fit_WhenFixedEffectsExplainEverything_IsNotEstimable() =>
        Assert.Throws<NotEstimableException>(() => MixedModel.Fit(Data([1, 2, 1, 2, 1, 2, 1, 2]), [Term.Of("day")], [Term.Of("plot")]));

    [Fact]
    public void Fit_WhenNothingIsLeft_IsNotEstimable() =>
        Assert.Throws<NotEstimableException>(() => MixedModel.Fit(Data(Values), [Term.Of("day"), Term.Of("plot"), Term.Of("plot", "day")], []));

    [Fact]
    public void Fit_WhenAPlotHasTwoValuesAtOneTime_IsRefused() =>
        Assert.Contains("two values at one pull", Assert.Throws<ArgumentException>(() => MixedModel.Fit(Data(Values), [], [], Pulls([0, 30, 0, 30, 0, 30, 0, 0]))).Message, StringComparison.Ordinal);

    [Fact]
    public void Fit_WhenTimesDoNotMatchTheRows_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => MixedModel.Fit(Data(Values), [], [], Pulls([0, 30])));
        Assert.Throws<ArgumentException>(() => MixedModel.Fit(Data(Values), [], [], Pulls([0, 0, 0, 0, 0, 0, 0, 0])));
        Assert.Throws<ArgumentException>(() => MixedModel.Fit(Data(Values), [], [], Pulls([0, 30, 0, 30, 0, 30, 0, double.NaN])));
    }

    [Fact]
    public void Fit_WhenAVarianceWouldBeNegative_StopsAtZero()
    {
        // Plots that agree better than their pulls: the moment estimate of the plot variance is below zero.
        var fit = MixedModel.Fit(Data([1, 9, 9, 1.5, 2, 8, 8.5, 1]), [], [Term.Of("plot")]);

        Assert.InRange(fit.CovarianceParameter("variance of plot"), 0, 1e-6);
    }

    [Fact]
    public void Fit_WhenCompoundSymmetryIsNegative_FollowsTheData()
    {
        var fit = MixedModel.Fit(Data([1, 9, 9, 1.5, 2, 8, 8.5, 1]), [], [], Pulls(Days));

        Assert.True(fit.CovarianceParameter("variance of plot") < 0);
    }

    /// <summary>Unequal spacing: correlation falls with the days between pulls, so 30 and 60 days apart relate as phi and phi squared.</summary>
    [Fact]
    public void Fit_WhenPullsAreUnevenlySpaced_UsesTheDistances()
    {
        var random = new Random(3);
        var rows = Enumerable.Range(0, 60).SelectMany(plot =>
        {
            var level = random.NextDouble() + random.NextDouble() - 1;
            var next = (0.8 * level) + (0.6 * (random.NextDouble() + random.NextDouble() - 1));
            var last = (0.64 * next) + (Math.Sqrt(1 - (0.64 * 0.64)) * (random.NextDouble() + random.NextDouble() - 1));
            return new[] { (Plot: plot, Day: 0.0, Value: level), (Plot: plot, Day: 30.0, Value: next), (Plot: plot, Day: 90.0, Value: last) };
        }).ToArray();
        var data = new ModelData([.. rows.Select(row => row.Value)], [Factor.InOrderOfAppearance("plot", [.. rows.Select(row => $"{row.Plot}")])]);

        var fit = MixedModel.Fit(data, [], [], new RepeatedPulls(Term.Of("plot"), [.. rows.Select(row => row.Day)], CovarianceStructure.Exponential));

        Assert.InRange(fit.CovarianceParameter("correlation at the shortest interval"), 0.65, 0.92); // 0.8 was put in; 60 plots leave about 0.06 of error
        Assert.Throws<KeyNotFoundException>(() => fit.CovarianceParameter("phi"));
        Assert.Empty(fit.Tests(DegreesOfFreedom.Satterthwaite).Rows);
        CheckData.Near(fit.LogLikelihood, MixedModel.Fit(data, [], [], new RepeatedPulls(Term.Of("plot"), [.. rows.Select(row => row.Day / 7)], CovarianceStructure.Exponential)).LogLikelihood);
    }
}
