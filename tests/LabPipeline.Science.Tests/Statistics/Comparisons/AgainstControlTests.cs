using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Comparisons;

public sealed class AgainstControlTests
{
    [Fact]
    public void Dunnett_OnPlantGrowth_AgreesWithTheIntegratedExamples()
    {
        var found = AgainstControl.Dunnett(ReferenceMeans.Load("PlantGrowth"), "ctrl", 0.05, Sidedness.TwoSided);

        Assert.Equal("Dunnett two-sided against ctrl", found.Procedure);
        foreach (var row in ReferenceTable.Load("G_dunnett_examples.csv").Rows)
        {
            var pair = found.Comparisons.Single(one => one.Name == row.Text("comparison"));
            Agreement.Absolute(row.Number("difference"), pair.Difference, 1e-9, row);
            Agreement.Absolute(row.Number("SE"), pair.Sed, 1e-10, row);
            Agreement.Absolute(row.Number("t"), pair.Statistic, 1e-8, row);
            Agreement.Absolute(row.Number("p_two_sided_integration"), pair.P, 1e-8, row);
            Agreement.Absolute(row.Number("CI95_low"), pair.Low, 1e-6, row);
            Agreement.Absolute(row.Number("CI95_high"), pair.High, 1e-6, row);
        }

        // The rows of the simulation-based program are good to 1e-5.
        foreach (var row in ReferenceTable.Load("G_pairwise.csv").Rows.Where(row => row.Text("procedure").StartsWith("Dunnett", StringComparison.Ordinal)))
        {
            Agreement.Absolute(row.Number("p_adj"), found.Comparisons.Single(one => one.Name == row.Text("comparison")).P, 1e-5, row);
        }
    }

    [Fact]
    public void Dunnett_ForFourTreatmentsAndTwentyDf_IsThePublishedTwoPointSixFive()
    {
        // Dunnett's table, two-sided 5 %, 4 treatments, 20 df: 2.65 (quoted with the check values).
        Assert.Equal(2.65, Math.Round(Dunnett.ForEqualSizes(4, 20, Sidedness.TwoSided).UpperQuantile(0.05), 2));
    }

    [Fact]
    public void Dunnett_FromStandardErrors_FindsTheSameCorrelationsAsFromSizes()
    {
        MeanEstimate[] means = [new("A", 3, 6), new("check", 1, 6), new("B", 2.5, 4), new("C", 0.2, 12), new("D", 1.1, 3)];
        var compared = ComparedMeans.FromErrorMeanSquare(means, 2.0, 27);
        var direct = Dunnett.ForSizes(6, [6, 4, 12, 3], 27, Sidedness.TwoSided);
        foreach (var pair in AgainstControl.Dunnett(compared, "check", 0.05, Sidedness.TwoSided).Comparisons)
        {
            Agreement.Relative(direct.Upper(Math.Abs(pair.Statistic)), pair.P, 1e-9, pair.Name);
            Agreement.Relative(direct.UpperQuantile(0.05) * pair.Sed, pair.High - pair.Difference, 1e-9, pair.Name);
        }
    }

    [Fact]
    public void Dunnett_OneSided_ClaimsOnlyItsOwnDirection()
    {
        MeanEstimate[] means = [new("check", 10, 5), new("high", 14, 5), new("low", 6, 5)];
        var compared = ComparedMeans.FromErrorMeanSquare(means, 2.0, 12);
        var above = AgainstControl.Dunnett(compared, "check", 0.05, Sidedness.Above);
        var below = AgainstControl.Dunnett(compared, "check", 0.05, Sidedness.Below);

        Assert.True(above.Comparisons[0].P < 0.01 && above.Comparisons[1].P > 0.99);
        Agreement.Relative(above.Comparisons[0].P, below.Comparisons[1].P, 1e-12);
        Assert.Equal(double.PositiveInfinity, above.Comparisons[0].High);
        Assert.Equal(double.NegativeInfinity, below.Comparisons[0].Low);
        Assert.True(above.Comparisons[0].Low > 0);
        Assert.True(below.Comparisons[1].High < 0);
    }

    [Fact]
    public void Dunnett_WhenOnePlotIsMissing_StillFindsProductCorrelations()
    {
        // Complete blocks b = 4, t = 6 with one plot of treatment 0 missing: its SED² is s²(2/b + t/(b(b-1)(t-1))) (Yates 1933).
        MeanEstimate[] means = [.. Enumerable.Range(0, 6).Select(index => new MeanEstimate($"T{index}", index, index == 0 ? 3 : 4))];
        var compared = new ComparedMeans(means, (i, _) => new PairPrecision(Math.Sqrt(i == 0 ? 0.5 + (6 / 60.0) : 0.5), 14));
        Assert.Equal(5, AgainstControl.Dunnett(compared, "T3", 0.05, Sidedness.TwoSided).Comparisons.Count);
        Assert.Equal(5, AgainstControl.Dunnett(compared, "T0", 0.05, Sidedness.TwoSided).Comparisons.Count);
    }

    [Fact]
    public void Dunnett_WhenItDoesNotApply_SaysWhy()
    {
        MeanEstimate[] means = [new("A", 1, 4), new("B", 2, 4), new("C", 3, 4), new("D", 4, 4)];
        var mixedDf = new ComparedMeans(means, (i, j) => new PairPrecision(1, i == 0 ? 10 : 20));
        Assert.Contains("different degrees of freedom, 10 to 20", Why(mixedDf), StringComparison.Ordinal);
        var oddErrors = new ComparedMeans(means, (i, j) => new PairPrecision((i, j) is (1, 2) or (2, 3) ? 0.4 : 1, 20));
        Assert.Contains("not products of one number", Why(oddErrors), StringComparison.Ordinal);
        var fine = ComparedMeans.FromErrorMeanSquare(means, 1, 12);
        Assert.Throws<ArgumentException>(() => AgainstControl.Dunnett(fine, "X", 0.05, Sidedness.TwoSided));
        Assert.Throws<ArgumentOutOfRangeException>(() => AgainstControl.Dunnett(fine, "A", 5, Sidedness.TwoSided));

        static string Why(ComparedMeans compared) =>
            Assert.Throws<NotEstimableException>(() => AgainstControl.Dunnett(compared, "A", 0.05, Sidedness.TwoSided)).Message;
    }
}
