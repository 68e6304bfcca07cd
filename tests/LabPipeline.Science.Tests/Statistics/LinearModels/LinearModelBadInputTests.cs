using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.LinearModels;

namespace LabPipeline.Science.Tests.Statistics.LinearModels;

public sealed class LinearModelBadInputTests
{
    private static readonly string[] Rates = ["0", "0", "1", "1", "2", "2"];

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void Data_WhenAValueIsNotFinite_IsRefusedWithItsRow(double value)
    {
        var fault = Assert.Throws<ArgumentException>(() => new ModelData([1, 2, value], []));

        Assert.Contains("row 3", fault.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new ModelData([1, 2, 3], [], [new Covariate("day", [1, 2, value])]));
    }

    [Fact]
    public void Factor_WhenItHasOneLevel_IsRefused() =>
        Assert.Contains("1 level(s)", Assert.Throws<ArgumentException>(() => Factor.InOrderOfAppearance("rate", ["a", "a"])).Message, StringComparison.Ordinal);

    [Fact]
    public void Factor_WhenALevelIsUnknown_NamesRowAndLevels() =>
        Assert.Contains("row 2: found level 'c'; expected one of a, b", Assert.Throws<ArgumentException>(() => Factor.Of("rate", ["a", "b"], ["a", "c"])).Message, StringComparison.Ordinal);

    [Fact]
    public void Factor_WhenALevelIsNamedTwice_IsRefused() =>
        Assert.Throws<ArgumentException>(() => Factor.Of("rate", ["a", "b", "a"], ["a", "b"]));

    [Fact]
    public void Data_WhenColumnsDifferInLength_IsRefused() =>
        Assert.Contains("3 row(s)", Assert.Throws<ArgumentException>(() => new ModelData([1, 2], [Factor.InOrderOfAppearance("rate", ["a", "b", "a"])])).Message, StringComparison.Ordinal);

    [Fact]
    public void Fit_WhenATermIsUnknownOrTwice_IsRefused()
    {
        var data = new ModelData([1, 2, 3, 4, 5, 6], [Factor.InOrderOfAppearance("rate", Rates)]);

        Assert.Throws<ArgumentException>(() => LinearModel.Fit(data, Term.Of("dose")));
        Assert.Throws<ArgumentException>(() => LinearModel.Fit(data, Term.Of("rate"), Term.Of("rate")));
    }

    [Fact]
    public void Means_WhenALevelWasNeverObserved_SayNotEstimable()
    {
        var fit = LinearModel.Fit(new ModelData([1, 2, 3, 5], [Factor.Of("rate", ["0", "1", "2"], ["0", "0", "1", "1"])]), Term.Of("rate"));

        var lost = fit.Means("rate").Find("2");

        Assert.Null(lost.Value);
        Assert.NotNull(lost.NotEstimable);
        Assert.Equal(0, lost.Count);
        CheckData.Near(4, fit.Means("rate").Find("1").Value);
        Assert.Throws<NotEstimableException>(() => fit.Means("rate").Difference("2", "1"));
        Assert.Equal(1, fit.Anova(SumsOfSquares.Sequential).Find("rate").Df);
        Assert.Equal("rate", Assert.Single(fit.Anova(SumsOfSquares.TypeThree).NotEstimable).Term);
    }

    [Fact]
    public void Anova_WhenFactorsAreConfounded_ListsTheSecond()
    {
        var data = new ModelData([1, 2, 4, 3, 6, 7], [Factor.InOrderOfAppearance("rate", Rates), Factor.InOrderOfAppearance("bay", Rates)]);

        var table = LinearModel.Fit(data, Term.Of("rate"), Term.Of("bay")).Anova(SumsOfSquares.Sequential);

        Assert.Equal(("bay", 2), (table.NotEstimable[0].Term, table.NotEstimable[0].LostDf));
        Assert.DoesNotContain(table.Rows, row => row.Term == "bay");
    }

    [Fact]
    public void Anova_WhenAllValuesAreEqual_TestsNothing()
    {
        var fit = LinearModel.Fit(new ModelData([5, 5, 5, 5, 5, 5], [Factor.InOrderOfAppearance("rate", Rates)]), Term.Of("rate"));

        var row = fit.Anova(SumsOfSquares.Sequential).Find("rate");

        Assert.Null(row.F);
        Assert.Null(row.P);
        Assert.Contains("residual mean square is zero", row.NotTested, StringComparison.Ordinal);
        CheckData.Near(5, fit.Means("rate").Find("1").Value);
        Assert.Throws<NotEstimableException>(() => fit.Means("rate").Difference("0", "1"));
    }

    [Fact]
    public void Anova_WhenNoReplication_SaysNoDegreesOfFreedom()
    {
        var fit = LinearModel.Fit(new ModelData([5, 6, 9], [Factor.InOrderOfAppearance("rate", ["a", "b", "c"])]), Term.Of("rate"));

        Assert.Contains("no residual degrees of freedom", fit.Anova(SumsOfSquares.Sequential).Find("rate").NotTested, StringComparison.Ordinal);
        Assert.Throws<NotEstimableException>(() => fit.ResidualMeanSquare);
        Assert.All(fit.StudentizedResiduals, residual => Assert.Null(residual));
    }

    [Fact]
    public void LeastSignificantDifference_WhenAlphaIsOutOfRange_IsRefused()
    {
        var difference = LinearModel.Fit(new ModelData([1, 2, 4, 3, 6, 7], [Factor.InOrderOfAppearance("rate", Rates)]), Term.Of("rate")).Means("rate").Difference("0", "1");

        Assert.Throws<ArgumentOutOfRangeException>(() => difference.LeastSignificantDifference(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => difference.LeastSignificantDifference(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => difference.CochranCoxT(double.NaN));
    }
}
