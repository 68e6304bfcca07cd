using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Tests;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Tests;

/// <summary>Diagnostic tests against G_diagnostics.csv (R 4.2.2, 12 digits) and the sources named at each.</summary>
public sealed class DiagnosticsTests
{
    private static readonly IReadOnlyList<IReadOnlyList<double>> Seedrate = ReferenceData.Blocks("G_data_gomez_seedrate.csv", "rep", "rate", "yield");

    private static readonly IReadOnlyList<IReadOnlyList<double>> Sprays = ReferenceData.Groups("G_data_InsectSprays.csv", "spray", "count");

    private static readonly IReadOnlyList<IReadOnlyList<double>> RootSprays = [.. Sprays.Select(group => group.Select(Math.Sqrt).ToArray())];

    /// <summary>scipy 1.10.1: three unequal groups made up for this test.</summary>
    private static readonly IReadOnlyList<IReadOnlyList<double>> Unequal =
        [[24.5, 23.5, 26.4, 27.1, 29.9], [28.4, 34.2, 29.5], [26.1, 28.3, 24.3, 26.2, 27.8, 25.0]];

    [Fact]
    public void ShapiroWilk_OnResiduals_AgreesWithTheCheckFile()
    {
        Check("gomez_seedrate", "Shapiro-Wilk W on residuals", ShapiroWilk.Of(ReferenceData.AdditiveResiduals(Seedrate)));
        Check("InsectSprays_raw", "Shapiro-Wilk W on residuals", ShapiroWilk.Of(ReferenceData.GroupResiduals(Sprays)));
        Check("InsectSprays_sqrt", "Shapiro-Wilk W on residuals", ShapiroWilk.Of(ReferenceData.GroupResiduals(RootSprays)));
    }

    /// <summary>scipy 1.10.1, which works in single precision here: five digits.</summary>
    [Theory]
    [InlineData(0.9642857313156128, 0.6368856430053711, new double[] { 1, 2, 4 })]
    [InlineData(0.8805780410766602, 0.31193867325782776, new double[] { 1, 2, 4, 3.5, 9 })]
    [InlineData(0.8268193006515503, 0.05500601604580879, new[] { 2.1, 3.3, 1.2, 8.4, 2.2, 2.9, 3.1, 7.0 })]
    public void ShapiroWilk_OnSmallSamples_AgreesToFiveDigits(double w, double p, double[] values)
    {
        var found = ShapiroWilk.Of(values);
        Agreement.Relative(w, found.Statistic, 1e-5);
        Agreement.Relative(p, found.P, 5e-5);
    }

    [Fact]
    public void EqualVariances_OnTheDataSets_AgreeWithTheCheckFile()
    {
        var rates = ReferenceData.Groups("G_data_gomez_seedrate.csv", "rate", "yield");
        Check("gomez_seedrate", "Brown-Forsythe (Levene, median)", EqualVariances.BrownForsythe(rates));
        Check("InsectSprays_raw", "Brown-Forsythe (Levene, median)", EqualVariances.BrownForsythe(Sprays));
        Check("InsectSprays_raw", "Bartlett K2", EqualVariances.Bartlett(Sprays));
        Check("InsectSprays_sqrt", "Brown-Forsythe (Levene, median)", EqualVariances.BrownForsythe(RootSprays));
        Check("InsectSprays_sqrt", "Bartlett K2", EqualVariances.Bartlett(RootSprays));
    }

    [Fact]
    public void EqualVariances_OnUnequalGroups_AgreeWithAnotherProgram()
    {
        Agreement.Relative(1.4706824878336764, EqualVariances.Bartlett(Unequal).Statistic, 1e-12);
        Agreement.Relative(0.4793418585693373, EqualVariances.Bartlett(Unequal).P, 1e-12);
        Agreement.Relative(0.3798710024187054, EqualVariances.BrownForsythe(Unequal).Statistic, 1e-12);
        Agreement.Relative(0.6925831188728507, EqualVariances.BrownForsythe(Unequal).P, 1e-12);
    }

    [Fact]
    public void KruskalWallis_WithAndWithoutTies_AgreesWithPublishedValues()
    {
        Agreement.Relative(5.121904761904759, KruskalWallis.Of(Unequal).Statistic, 1e-12); // scipy 1.10.1
        Agreement.Relative(0.07723115192868499, KruskalWallis.Of(Unequal).P, 1e-12);
        // Sepal widths of 18 irises, many ties: H 10.922, p 0.004249, seen in the CAMIS comparison of statistical software (R).
        var irises = KruskalWallis.Of(new double[][] { [3.4, 3.0, 3.4, 3.2, 3.5, 3.1], [2.7, 2.9, 2.7, 2.6, 2.5, 2.5], [3.0, 3.0, 3.1, 3.8, 2.7, 3.3] });
        Agreement.Absolute(10.922, irises.Statistic, 5e-4);
        Agreement.Absolute(0.004249, irises.P, 5e-7);
        Assert.Equal(2, irises.Df1);
    }

    [Fact]
    public void NonAdditivity_OnSeedRates_AgreesWithTheCheckFile() =>
        Check("gomez_seedrate", "Tukey 1-df non-additivity F", NonAdditivity.Tukey(Seedrate));

    [Theory]
    [InlineData("wet")]
    [InlineData("dry")]
    public void OutlierTest_OnSwappedPlots_FindsThem(string response)
    {
        var table = ReferenceData.Blocks("G_data_ryder_groundnut_swap.csv", "block", "gen", response);
        var (blocks, treatments) = (table.Count, table[0].Count);
        var leverage = (blocks + treatments - 1.0) / (blocks * treatments);
        var outliers = OutlierTest.Evaluate(
            ReferenceData.AdditiveResiduals(table), [.. Enumerable.Repeat(leverage, blocks * treatments)], (blocks - 1) * (treatments - 1));

        var rows = ReferenceTable.Load("G_diagnostics.csv").Rows.Where(row => row.Text("dataset") == $"ryder_groundnut_swap:{response}").ToList();
        Assert.Equal(3, rows.Count);
        for (var place = 0; place < rows.Count; place++)
        {
            var row = rows[place];
            var (treatment, block) = (outliers[place].Index % treatments, outliers[place].Index / treatments);
            Assert.EndsWith($"of {(char)('A' + treatment)} B{block + 1}", row.Text("test"), StringComparison.Ordinal);
            Agreement.Relative(row.Number("statistic"), outliers[place].Studentised, 1e-10, row);
            Agreement.Relative(row.Number("p"), 24 * outliers[place].P, 1e-10, row);
            Agreement.Relative(Math.Min(1, row.Number("p")), outliers[place].BonferroniP, 1e-10, row);
        }
    }

    [Fact]
    public void Tests_OnDataWithoutInformation_SayWhy()
    {
        double[] flat = [2, 2, 2, 2];
        Assert.Contains("all 4 values are equal to 2", Why(() => ShapiroWilk.Of(flat)), StringComparison.Ordinal);
        Assert.Contains("all 8 values are equal to 2", Why(() => KruskalWallis.Of(new[] { flat, flat })), StringComparison.Ordinal);
        Assert.Contains("all 4 values of group 2 are equal", Why(() => EqualVariances.Bartlett(new[] { [1, 2, 3, 5], flat })), StringComparison.Ordinal);
        Assert.Contains("all distances from the median are equal", Why(() => EqualVariances.BrownForsythe(new double[][] { [1, 3], [5, 9] })), StringComparison.Ordinal);
        Assert.Contains("all block means", Why(() => NonAdditivity.Tukey(new double[][] { [1, 2, 3], [1, 2, 3] })), StringComparison.Ordinal);
        Assert.Contains("it alone fixes", Why(() => OutlierTest.Evaluate([0, 1, -1], [1, 0.5, 0.5], 2)), StringComparison.Ordinal);
        Assert.Contains("all other observations exactly", Why(() => OutlierTest.Evaluate([2, 0, 0, 0], [0, 0, 0, 0], 3)), StringComparison.Ordinal);
    }

    [Fact]
    public void Tests_OnBadInput_Refuse()
    {
        Assert.Throws<ArgumentException>(() => ShapiroWilk.Of([1, 2]));
        Assert.Throws<ArgumentException>(() => ShapiroWilk.Of([1, 2, double.NaN]));
        Assert.Throws<ArgumentException>(() => ShapiroWilk.Of([.. Enumerable.Range(0, 5001).Select(value => (double)value)]));
        Assert.Throws<ArgumentException>(() => KruskalWallis.Of(new double[][] { [1, 2] }));
        Assert.Throws<ArgumentException>(() => EqualVariances.Bartlett(new double[][] { [1, 2], [1] }));
        Assert.Throws<ArgumentException>(() => NonAdditivity.Tukey(new double[][] { [1, 2, 3], [1, 2] }));
        Assert.Throws<ArgumentException>(() => NonAdditivity.Tukey(new double[][] { [1, 2], [4, 2] }));
        Assert.Throws<ArgumentException>(() => OutlierTest.Evaluate([0, 1, -1], [0.5, 0.5], 2));
        Assert.Throws<ArgumentException>(() => OutlierTest.Evaluate([0, 1, -1], [0.5, 0.5, 1.5], 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => OutlierTest.Evaluate([0, 1, -1], [0.5, 0.5, 0.5], 1));
    }

    private static string Why(Action act) => Assert.Throws<NotEstimableException>(act).Message;

    private static void Check(string dataset, string test, TestOutcome found)
    {
        var row = ReferenceTable.Load("G_diagnostics.csv").Rows.Single(row => row.Text("dataset") == dataset && row.Text("test") == test);
        // Twelve digits are shown; Shapiro-Wilk constants are published to fewer but are the same on both sides.
        Agreement.Relative(row.Number("statistic"), found.Statistic, 1e-10, row);
        Agreement.Relative(row.Number("p"), found.P, 1e-9, row);
        Assert.Equal(row.Number("df1"), found.Df1);
        Assert.Equal(row.Has("df2") ? row.Number("df2") : null, found.Df2);
    }
}
