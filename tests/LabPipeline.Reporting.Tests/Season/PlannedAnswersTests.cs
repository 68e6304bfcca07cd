using LabPipeline.Reporting.Season;
using LabPipeline.Reporting.Season.Data;

namespace LabPipeline.Reporting.Tests.Season;

public sealed class PlannedAnswersTests
{
    /// <summary>A balanced contrast of two equal groups is the t test of their difference: estimate from the means, its square the F of the term with 1 df.</summary>
    [Fact]
    public void Answer_OfAFactorWithTwoLevels_IsTheFOfItsTerm()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder { Contrasts = Contrast("more nitrogen", "nitrogen", ("100", -1), ("200", 1)) }.Build());

        Assert.All(analysis.Find(ResponseCatalogue.Glucose)!.Pulls, pull =>
        {
            var found = Assert.Single(pull.Planned).Estimate!;
            var row = pull.Anova!.Find("nitrogen");
            Assert.Equal(row.F!.Value, found.F, 1e-9 * row.F.Value);
            Assert.Equal(row.P!.Value, found.P, 1e-9);
            Assert.Equal(pull.MeansOf("nitrogen")!.Find("200")!.OnScale!.Value - pull.MeansOf("nitrogen")!.Find("100")!.OnScale!.Value, found.Estimate, 12);
        });
        Assert.NotNull(Assert.Single(analysis.Find(ResponseCatalogue.Glucose)!.Season!.Planned).Estimate);
    }

    [Fact]
    public void Answer_OfAFactorWithOneLevelOnly_SaysWhyThereIsNone()
    {
        var analysis = TrialAnalyser.Analyse(new SeasonBuilder { Clones = ["KT-1"], Contrasts = Contrast("clones", "clone", ("KT-1", -1), ("KT-2", 1)) }.Build());

        Assert.Contains("no means of clone", analysis.Find(ResponseCatalogue.Glucose)!.Pulls[0].Planned[0].WhyNone!, StringComparison.Ordinal);
    }

    private static ContrastFact[] Contrast(string name, string factors, params (string Cell, decimal Coefficient)[] cells) =>
        [.. cells.Select(cell => new ContrastFact { Name = name, Factors = factors, Cell = cell.Cell, Coefficient = cell.Coefficient, StatedAt = new DateTimeOffset(2025, 9, 1, 0, 0, 0, TimeSpan.Zero) })];
}
