using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Comparisons;

/// <summary>G_pairwise.csv, computed in R 4.2.2: its Tukey p and q are good to 1e-7 at these df (10 and above).</summary>
public sealed class PairwiseTests
{
    public static TheoryData<string> Datasets => [.. ReferenceMeans.Datasets];

    [Theory]
    [MemberData(nameof(Datasets))]
    public void Tukey_OnEveryPair_AgreesWithTheCheckFile(string dataset) =>
        CheckPairs(dataset, "Tukey HSD", AllPairs.Tukey(ReferenceMeans.Load(dataset), 0.05), absoluteStatistic: true, pTolerance: 1e-7, endTolerance: 1e-6);

    [Theory]
    [MemberData(nameof(Datasets))]
    public void UnprotectedLsd_OnEveryPair_AgreesWithTheCheckFile(string dataset) =>
        CheckPairs(dataset, "Fisher LSD (unadjusted t)", AllPairs.Adjusted(ReferenceMeans.Load(dataset), PValueAdjustment.None, 0.05), absoluteStatistic: false, pTolerance: 1e-10, endTolerance: 1e-9);

    [Theory]
    [MemberData(nameof(Datasets))]
    public void Hsd_OnEveryDataSet_AgreesWithTheCheckFile(string dataset)
    {
        var means = ReferenceMeans.Load(dataset);
        var precision = means.Precision(0, 1);
        var row = Rows(dataset, "Tukey HSD critical difference (HSD)").Single();
        var hsd = CriticalDifference.Hsd(precision.Sed, means.Count, precision.Df, 0.05);
        Agreement.Relative(row.Number("difference"), hsd, 1e-7, row);
        Agreement.Relative(row.Number("statistic"), StudentizedRange.UpperQuantile(0.05, means.Count, precision.Df), 1e-7, row);
    }

    [Fact]
    public void Lsd_OnEveryRow_AgreesWithTheCheckFile()
    {
        foreach (var row in ReferenceTable.Load("G_sed_lsd.csv").Rows)
        {
            Agreement.Relative(row.Number("LSD_5pct"), CriticalDifference.Lsd(row.Number("SED"), row.Number("df"), 0.05), 1e-10, row);
            Agreement.Relative(row.Number("LSD_1pct"), CriticalDifference.Lsd(row.Number("SED"), row.Number("df"), 0.01), 1e-10, row);
        }
    }

    [Fact]
    public void Tukey_OnPlantGrowth_AgreesWithTheSecondProgramOfTheFile()
    {
        var found = AllPairs.Tukey(ReferenceMeans.Load("PlantGrowth"), 0.05).Comparisons.ToDictionary(pair => pair.Name.Replace(" ", "", StringComparison.Ordinal));
        foreach (var row in Rows("PlantGrowth", "R TukeyHSD()"))
        {
            var pair = found[row.Text("comparison")];
            Agreement.Absolute(row.Number("p_adj"), pair.P, 1e-7, row);
            Agreement.Absolute(row.Number("CI95_low"), pair.Low, 1e-7, row);
            Agreement.Absolute(row.Number("CI95_high"), pair.High, 1e-7, row);
        }
    }

    /// <summary>scipy 1.10.1 tukey_hsd, three unequal groups made up for this test: 5, 3 and 6 values.</summary>
    [Fact]
    public void TukeyKramer_OnUnequalGroups_AgreesWithAnotherProgram()
    {
        double[][] groups = [[24.5, 23.5, 26.4, 27.1, 29.9], [28.4, 34.2, 29.5], [26.1, 28.3, 24.3, 26.2, 27.8, 25.0]];
        var moments = groups.Select(group => Moments.Of(group)).ToArray();
        var means = ComparedMeans.FromErrorMeanSquare(
            [.. moments.Select((one, index) => new MeanEstimate($"G{index}", one.Mean, one.Count))], moments.Sum(one => one.SumOfSquares) / 11, 11);
        var pairs = AllPairs.Tukey(means, 0.05).Comparisons;

        Agreement.Absolute(0.05087305, pairs[0].P, 2e-8);
        Agreement.Absolute(0.9999967, pairs[1].P, 1e-7);
        Agreement.Absolute(0.04392627, pairs[2].P, 2e-8);
        Agreement.Absolute(-0.01671846, pairs[0].Low, 1e-7);
        Agreement.Absolute(8.85671846, pairs[0].High, 1e-7);
        Agreement.Absolute(-0.12083249, pairs[2].High, 1e-7);
    }

    [Fact]
    public void ProtectedLsd_WhenFIsNotSignificant_CallsNoPairDifferent()
    {
        var means = ReferenceMeans.Load("gomez_seedrate");
        var anova = ReferenceTable.Load("G_anova_tables.csv").Rows.First(row => row.Text("dataset") == "gomez_seedrate" && row.Text("term") == "r");
        var protectedSet = AllPairs.ProtectedLsd(means, new OverallTest(anova.Number("F"), 5, 15), 0.05);

        Assert.Equal("Fisher LSD protected by F: F is not significant (p = 0.113), so no pair is called different", protectedSet.Procedure);
        Assert.Contains(protectedSet.Comparisons, pair => pair.P < 0.05);
        Assert.DoesNotContain(protectedSet.Comparisons, protectedSet.IsDifferent);
        Assert.Contains(AllPairs.ProtectedLsd(means, new OverallTest(9, 5, 15), 0.05).Comparisons, pair => pair.P < 0.05);
        Assert.Equal("Fisher LSD protected by F (p = 0.000409)", AllPairs.ProtectedLsd(means, new OverallTest(9, 5, 15), 0.05).Procedure);
        Assert.Equal("Fisher LSD, not protected", AllPairs.Adjusted(means, PValueAdjustment.None, 0.05).Procedure);
    }

    [Fact]
    public void Adjusted_OverAllPairs_RaisesThePValuesAndSaysHow()
    {
        var means = ReferenceMeans.Load("InsectSprays_sqrt");
        var plain = AllPairs.Adjusted(means, PValueAdjustment.None, 0.05);
        var holm = AllPairs.Adjusted(means, PValueAdjustment.Holm, 0.05);
        var bonferroni = AllPairs.Adjusted(means, PValueAdjustment.Bonferroni, 0.05);

        Assert.Equal("t tests, Holm", holm.Procedure);
        Assert.Equal("All together with 95 % confidence", bonferroni.Intervals);
        for (var index = 0; index < 15; index++)
        {
            Agreement.Relative(Math.Min(1, 15 * plain.Comparisons[index].P), bonferroni.Comparisons[index].P, 1e-14);
            Assert.InRange(holm.Comparisons[index].P, plain.Comparisons[index].P, bonferroni.Comparisons[index].P);
            // An interval at 1 - 0.05/15 leaves out 0 exactly when the adjusted p is below 0.05.
            var pair = bonferroni.Comparisons[index];
            Assert.Equal(bonferroni.IsDifferent(pair), pair.Low > 0 || pair.High < 0);
        }
    }

    [Fact]
    public void ComparedMeans_OnBadInput_Refuse()
    {
        MeanEstimate[] two = [new("A", 1, 4), new("B", 2, 4)];
        Assert.Throws<ArgumentException>(() => ComparedMeans.FromErrorMeanSquare([two[0]], 1, 5));
        Assert.Throws<ArgumentException>(() => ComparedMeans.FromErrorMeanSquare([two[0], two[0]], 1, 5));
        Assert.Throws<ArgumentException>(() => ComparedMeans.FromErrorMeanSquare([two[0], new("B", double.NaN, 4)], 1, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => ComparedMeans.FromErrorMeanSquare([two[0], new("B", 2, 0)], 1, 5));
        Assert.Throws<ArgumentException>(() => ComparedMeans.FromErrorMeanSquare(two, -1, 5));
        Assert.Throws<ArgumentException>(() => ComparedMeans.FromErrorMeanSquare(two, 1, double.NaN));
        Assert.Throws<NotEstimableException>(() => ComparedMeans.FromErrorMeanSquare(two, 0, 5));
        var error = Assert.Throws<ArgumentException>(() => ComparedMeans.FromErrorMeanSquare(two, 1, 5).IndexOf("C"));
        Assert.Contains("No mean is called 'C'; there are A, B.", error.Message, StringComparison.Ordinal);
    }

    private static List<ReferenceRow> Rows(string dataset, string procedure) =>
        [.. ReferenceTable.Load("G_pairwise.csv").Rows.Where(row => row.Text("dataset") == dataset && row.Text("procedure") == procedure)];

    private static void CheckPairs(string dataset, string procedure, ComparisonSet set, bool absoluteStatistic, double pTolerance, double endTolerance)
    {
        var rows = Rows(dataset, procedure);
        Assert.Equal(rows.Count, set.Comparisons.Count);
        var found = set.Comparisons.ToDictionary(pair => pair.Name);
        foreach (var row in rows)
        {
            var pair = found[row.Text("comparison")];
            // Means are printed to 12 digits; their differences keep somewhat fewer.
            Agreement.Absolute(row.Number("difference"), pair.Difference, 1e-9 * Math.Max(1, pair.Sed), row);
            Agreement.Relative(row.Number("SE"), pair.Sed, 1e-10, row);
            Assert.Equal(row.Number("df"), pair.Df);
            Agreement.Absolute(row.Number("statistic"), absoluteStatistic ? Math.Abs(pair.Statistic) : pair.Statistic, 1e-8, row);
            Agreement.Absolute(row.Number("p_adj"), pair.P, pTolerance, row);
            Agreement.Absolute(row.Number("CI95_low"), pair.Low, endTolerance * pair.Sed, row);
            Agreement.Absolute(row.Number("CI95_high"), pair.High, endTolerance * pair.Sed, row);
        }
    }
}
