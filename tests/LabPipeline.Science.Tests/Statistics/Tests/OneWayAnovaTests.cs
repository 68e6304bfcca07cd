using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Tests;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Tests;

public sealed class OneWayAnovaTests(ITestOutputHelper output)
{
    public static TheoryData<string> Sets => [.. ReferenceTable.Load("G_nist_strd_certified.csv").Rows.Select(row => row.Text("dataset"))];

    /// <summary>
    /// NIST StRD, one-way sets, certified to 15 digits. Numbers typed as double: in SmLs07-09 the data themselves are rounded to
    /// 1.2e-4 beside a spread of 0.1, so about four digits are all there are (3.91 in one sum of squares; F has 4.2 or more).
    /// The third test shows that the arithmetic adds no loss of its own.
    /// </summary>
    [Theory]
    [MemberData(nameof(Sets))]
    public void Of_OnCertifiedSetsReadAsDouble_AgreesAsFarAsDoublesCan(string set) =>
        Certify(set, OneWayAnova.Of(Groups(set, row => row.Number("response"))), lower: 12, average: 9, higher: 3.9);

    /// <summary>The same sets read as decimal: the shift is exact and every set keeps its digits.</summary>
    [Theory]
    [MemberData(nameof(Sets))]
    public void Of_OnCertifiedSetsReadAsDecimal_AgreesToTwelveDigits(string set) =>
        Certify(set, OneWayAnova.Of(Groups(set, row => row.Exact("response"))), lower: 12, average: 12, higher: 12);

    [Theory]
    [InlineData("SmLs07")]
    [InlineData("SmLs08")]
    [InlineData("SmLs09")]
    public void Of_OnTheHardestSetsReadAsDouble_LosesNothingBeyondTheRoundingOfTheData(string set)
    {
        // Near 1e12 a double is a whole number of 8192ths, which a decimal holds exactly.
        var doubles = Groups(set, row => row.Number("response"));
        var exact = doubles.Select(group => group.Select(value => 1e12m + ((decimal)((value - 1e12) * 8192) / 8192)).ToArray()).ToArray();
        var (found, expected) = (OneWayAnova.Of(doubles), OneWayAnova.Of(exact));
        Agreement.Relative(expected.F, found.F, 1e-12, set);
        Agreement.Relative(expected.SumOfSquaresBetween, found.SumOfSquaresBetween, 1e-12, set);
        Assert.True(Agreement.Digits(ReferenceTable.Load("G_nist_strd_certified.csv").Find("dataset", set).Number("F_certified"), found.F) >= 4);
    }

    [Theory]
    [InlineData("PlantGrowth", "G_data_PlantGrowth.csv", "group", "weight")]
    [InlineData("InsectSprays_raw", "G_data_InsectSprays.csv", "spray", "count")]
    public void Of_OnPublishedSets_GivesTheTableOfTheCheckFile(string dataset, string file, string factor, string response)
    {
        var anova = OneWayAnova.Of(ReferenceData.Groups(file, factor, response));
        var rows = ReferenceTable.Load("G_anova_tables.csv").Rows.Where(row => row.Text("dataset") == dataset).ToList();
        Agreement.Relative(rows[0].Number("sum_sq"), anova.SumOfSquaresBetween, 1e-11, dataset);
        Agreement.Relative(rows[1].Number("sum_sq"), anova.SumOfSquaresWithin, 1e-11, dataset);
        Agreement.Relative(rows[0].Number("F"), anova.F, 1e-11, dataset);
        Agreement.Relative(rows[0].Number("p"), anova.P, 1e-10, dataset);
        Assert.Equal(rows[1].Count("df"), anova.DfWithin);
    }

    [Fact]
    public void Of_WhenReplicatesAgreeExactly_IsNotEstimable()
    {
        var error = Assert.Throws<NotEstimableException>(() => OneWayAnova.Of(new double[][] { [0.1, 0.1, 0.1], [0.7, 0.7, 0.7] }));
        Assert.Contains("the error variance is 0", error.Message, StringComparison.Ordinal);
        Assert.Throws<NotEstimableException>(() => OneWayAnova.Of(new double[][] { [1], [2], [4] }));
    }

    [Fact]
    public void Of_WhenTheGroupsAreUnusable_SaysWhich()
    {
        Assert.Contains("Group 2 of 2 has 0 values", Fault([1, 2], []), StringComparison.Ordinal);
        Assert.Contains("Found 1 groups", Fault([1, 2]), StringComparison.Ordinal);
        Assert.Contains("Group 1 of 2: value 2 of 2 is NaN", Fault([1, double.NaN], [1, 2]), StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => OneWayAnova.Of(new decimal[][] { [1m, 2m], [] }));
    }

    private static string Fault(params double[][] groups) => Assert.ThrowsAny<ArgumentException>(() => OneWayAnova.Of(groups)).Message;

    private static T[][] Groups<T>(string set, Func<ReferenceRow, T> read) =>
        [.. ReferenceTable.Load($"G_nist_strd/{set}.csv").Rows.GroupBy(row => row.Text("treatment")).Select(group => group.Select(read).ToArray())];

    private void Certify(string set, OneWayAnova anova, double lower, double average, double higher)
    {
        var row = ReferenceTable.Load("G_nist_strd_certified.csv").Find("dataset", set);
        (string What, double Digits)[] agreement =
        [
            ("SS between", Agreement.Digits(row.Number("SS_between_certified"), anova.SumOfSquaresBetween)),
            ("SS within", Agreement.Digits(row.Number("SS_within_certified"), anova.SumOfSquaresWithin)),
            ("F", Agreement.Digits(row.Number("F_certified"), anova.F)),
            ("R squared", Agreement.Digits(row.Number("R2_certified"), anova.RSquared)),
            ("residual SD", Agreement.Digits(row.Number("residual_SD_certified"), anova.ResidualStandardDeviation)),
        ];
        output.WriteLine($"{set}: {string.Join(", ", agreement.Select(one => FormattableString.Invariant($"{one.What} {one.Digits:F1}")))} digits");
        var wanted = row.Text("difficulty")[0] switch { 'L' => lower, 'A' => average, _ => higher };
        Assert.All(agreement, one => Assert.True(one.Digits >= wanted, FormattableString.Invariant($"{set} {one.What}: {one.Digits:F1} digits, {wanted} wanted.")));
        Assert.Equal(row.Count("df_within"), anova.DfWithin);
        // A p below 1e-308 (SmLs03, 06, 09) is 0 in double precision.
        if (row.Number("p_value_computed") > 0)
        {
            Agreement.Relative(row.Number("p_value_computed"), anova.P, wanted >= 9 ? 1e-7 : 0.5, set);
        }
    }
}
