using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Comparisons;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Comparisons;

public sealed class ContrastTests
{
    [Theory]
    [InlineData("gomez_seedrate", "gomez_seedrate", new double[] { 25, 50, 75, 100, 125, 150 })]
    [InlineData("yates_oats N", "yates_oats:N", new[] { 0, 0.2, 0.4, 0.6 })]
    public void Trends_OnTheDataSets_AgreeWithTheCheckFile(string dataset, string source, double[] levels)
    {
        var means = ReferenceMeans.Load(source);
        var rows = ReferenceTable.Load("G_trend_contrasts.csv").Rows.Where(row => row.Text("dataset") == dataset).ToList();
        var contrasts = PolynomialContrasts.Of(levels, levels.Length - 1);
        Assert.Equal(rows.Count, contrasts.Count);
        foreach (var (row, contrast) in rows.Zip(contrasts))
        {
            Assert.Equal(row.Text("contrast"), contrast.Label);
            foreach (var (expected, coefficient) in row.Numbers("coef_orthonormal").Zip(contrast.Coefficients))
            {
                Agreement.Absolute(expected, coefficient, 1e-11, row);
            }

            var found = PlannedContrasts.Estimate(means, contrast, 0.05);
            Agreement.Relative(row.Number("estimate_orthonormal"), found.Estimate, 1e-9, row);
            Agreement.Relative(row.Number("SE"), found.StandardError, 1e-10, row);
            Agreement.Relative(row.Number("SS"), found.Estimate * found.Estimate * means.Means[0].N, 1e-8, row);
            Agreement.Relative(row.Number("t"), found.T, 1e-8, row);
            Agreement.Relative(row.Number("F"), found.F, 1e-8, row);
            Agreement.Relative(row.Number("p"), found.P, 1e-7, row);
            Assert.Equal(row.Number("df_error"), found.Df);
        }
    }

    /// <summary>numpy 1.24, QR of the Vandermonde matrix: storage pulls at 0, 7, 21, 60 and 120 days.</summary>
    [Fact]
    public void Polynomials_OverUnequalSpacing_AgreeWithAnotherProgram()
    {
        double[][] expected =
        [
            [-0.41942815502692815, -0.34885130201758935, -0.20769759599891152, 0.18551629933883362, 0.7904607537045956],
            [0.42449443069334963, 0.16740850511648145, -0.25154813923202485, -0.7492204496232319, 0.4088656530454254],
            [-0.4993954677893078, 0.13348027132022966, 0.724225336220192, -0.4475687135044669, 0.08925857375335308],
            [0.4410086936019907, -0.7952736501755706, 0.41119691711141115, -0.06272692594048557, 0.005794965402654201],
        ];
        var contrasts = PolynomialContrasts.Of([0, 7, 21, 60, 120], 4);
        for (var degree = 0; degree < 4; degree++)
        {
            for (var level = 0; level < 5; level++)
            {
                Agreement.Absolute(expected[degree][level], contrasts[degree].Coefficients[level], 1e-12);
            }
        }
    }

    [Fact]
    public void Estimate_OfOneDifference_IsThePairComparison()
    {
        var means = ReferenceMeans.Load("PlantGrowth");
        var contrast = PlannedContrasts.Estimate(means, new Contrast("treatment 2 against control", [-1, 0, 1]), 0.05);
        var pair = AllPairs.Adjusted(means, PValueAdjustment.None, 0.05).Comparisons.Single(one => one.Name == "trt2 - ctrl");
        Agreement.Relative(pair.Difference, contrast.Estimate, 1e-13);
        Agreement.Relative(pair.Sed, contrast.StandardError, 1e-13);
        Agreement.Relative(pair.P, contrast.P, 1e-12);
        Agreement.Relative(pair.Low, contrast.Low, 1e-12);
        Agreement.Relative(pair.High, contrast.High, 1e-12);
    }

    [Fact]
    public void Estimate_WithUnequalReplication_HasTheTextbookVariance()
    {
        // Var = s² Σ c²/n for independent means.
        MeanEstimate[] means = [new("A", 10, 3), new("B", 12, 5), new("C", 17, 8)];
        var found = PlannedContrasts.Estimate(ComparedMeans.FromErrorMeanSquare(means, 4, 13), new Contrast("C against the rest", [-0.5, -0.5, 1]), 0.05);
        Agreement.Relative(Math.Sqrt(4 * ((0.25 / 3) + (0.25 / 5) + (1.0 / 8))), found.StandardError, 1e-13);
        Agreement.Relative(6, found.Estimate, 1e-14);
    }

    [Fact]
    public void Estimate_OnBadInput_Refuses()
    {
        var means = ReferenceMeans.Load("PlantGrowth");
        var error = Assert.Throws<ArgumentException>(() => PlannedContrasts.Estimate(means, new Contrast("odd", [1, 1, -1]), 0.05));
        Assert.Contains("The coefficients of 'odd' add to 1; they must add to 0", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => PlannedContrasts.Estimate(means, new Contrast("none", [0, 0, 0]), 0.05));
        Assert.Throws<ArgumentException>(() => PlannedContrasts.Estimate(means, new Contrast("short", [1, -1]), 0.05));
        Assert.Throws<ArgumentException>(() => PlannedContrasts.Estimate(means, new Contrast("bad", [1, double.NaN, -1]), 0.05));
        var mixed = new ComparedMeans([.. means.Means], (i, j) => new PairPrecision(1, i + j));
        var missing = Assert.Throws<NotEstimableException>(() => PlannedContrasts.Estimate(mixed, new Contrast("all", [-1, 0.5, 0.5]), 0.05));
        Assert.Contains("different degrees of freedom", missing.Message, StringComparison.Ordinal);
        Assert.Equal(9, PlannedContrasts.Estimate(mixed, new Contrast("all", [-1, 0.5, 0.5]), 0.05, 9).Df);
        Assert.Throws<ArgumentException>(() => PolynomialContrasts.Of([1, 2, 2], 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => PolynomialContrasts.Of([1, 2, 3], 3));
    }
}
