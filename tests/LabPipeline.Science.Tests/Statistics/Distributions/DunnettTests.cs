using FsCheck;
using FsCheck.Xunit;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Distributions;

public sealed class DunnettTests(ITestOutputHelper output)
{
    [Fact]
    public void UpperQuantile_OnTheEqualSizeTable_AgreesToEightDecimals()
    {
        var worst = 0.0;
        foreach (var row in ReferenceTable.Load("G_dunnett_quantiles_equal_n.csv").Rows)
        {
            var (p, k) = (row.Number("p"), row.Count("k_treatments_excluding_control"));
            var df = row.Text("df") == "Inf" ? double.PositiveInfinity : row.Number("df");
            var two = Dunnett.ForEqualSizes(k, df, Sidedness.TwoSided).Quantile(p);
            var one = Dunnett.ForEqualSizes(k, df, Sidedness.Above).Quantile(p);
            worst = Math.Max(worst, Math.Max(Math.Abs(two - row.Number("d_two_sided")), Math.Abs(one - row.Number("d_one_sided"))));
            Agreement.Absolute(row.Number("d_two_sided"), two, 1e-8, row);
            Agreement.Absolute(row.Number("d_one_sided"), one, 1e-8, row);
        }

        output.WriteLine($"Largest difference from the table: {worst:E2}");
    }

    [Fact]
    public void Upper_OnTheExamples_AgreesToEightDecimals()
    {
        foreach (var row in ReferenceTable.Load("G_dunnett_examples.csv").Rows)
        {
            var dunnett = Dunnett.ForSizes(10, [10, 10], row.Number("df"), Sidedness.TwoSided);
            Agreement.Absolute(row.Number("p_two_sided_integration"), dunnett.Upper(Math.Abs(row.Number("t"))), 1e-8, row);
            Agreement.Absolute(row.Number("critical_d_5pct"), dunnett.UpperQuantile(0.05), 1e-8, row);
        }
    }

    /// <summary>Computed for this file by Gauss-Legendre panels on scipy 1.10.1, another method than ours.</summary>
    [Theory]
    [InlineData(20, "5 5 10", 8, 2.3, 0.12966865889127366, 0.06653819458531136)]
    [InlineData(20, "5 5 10", 27, 3.5, 0.0047991237912810795, 0.0024006983817816954)]
    [InlineData(6, "6 4 12 3", 8, 3.5, 0.02557282605885502, 0.01284873832110514)]
    [InlineData(6, "6 4 12 3", 27, 2.3, 0.09485392228318645, 0.04748962501014701)]
    [InlineData(6, "6 4 12 3", double.PositiveInfinity, 2.3, 0.0728119647713713, 0.036410997594838304)]
    [InlineData(4, "40 8", 8, 2.3, 0.07712573075812895, 0.03856870233859706)]
    [InlineData(4, "40 8", 27, 3.5, 0.0028167409599974672, 0.0014083704813710083)]
    [InlineData(4, "40 8", double.PositiveInfinity, 3.5, 0.0008434910169676083, 0.0004217455084838042)]
    public void Upper_WithUnequalSizes_AgreesWithDirectIntegration(int control, string sizes, double df, double d, double twoSided, double oneSided)
    {
        var treatments = sizes.Split(' ').Select(size => int.Parse(size, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        var two = Dunnett.ForSizes(control, treatments, df, Sidedness.TwoSided);
        var one = Dunnett.ForSizes(control, treatments, df, Sidedness.Above);
        Agreement.Relative(twoSided, two.Upper(d), 1e-9);
        Agreement.Relative(oneSided, one.Upper(d), 1e-9);
        Agreement.Absolute(1 - twoSided, two.Cdf(d), 1e-10);
        Agreement.Absolute(1 - oneSided, one.Cdf(d), 1e-10);
        Agreement.Relative(d, two.UpperQuantile(twoSided), 1e-9);
        Agreement.Relative(d, one.UpperQuantile(oneSided), 1e-9);
    }

    [Fact]
    public void Upper_WithOneTreatment_IsStudentsT()
    {
        foreach (var t in new[] { 0.4, 2.2, 7 })
        {
            Agreement.Relative(StudentT.TwoSided(t, 9), Dunnett.ForSizes(3, [11], 9, Sidedness.TwoSided).Upper(t), 1e-10);
            Agreement.Relative(StudentT.Upper(t, 9), Dunnett.ForSizes(3, [11], 9, Sidedness.Above).Upper(t), 1e-10);
            Agreement.Relative(StudentT.Upper(-t, 9), Dunnett.ForSizes(3, [11], 9, Sidedness.Above).Upper(-t), 1e-10);
        }
    }

    [Fact]
    public void UpperQuantile_OneSidedAboveOneHalf_IsNegative()
    {
        var one = Dunnett.ForEqualSizes(2, 20, Sidedness.Above);
        var d = one.UpperQuantile(0.9);
        Assert.True(d < 0);
        Agreement.Absolute(0.9, one.Upper(d), 1e-10);
        Agreement.Absolute(0.1, one.Cdf(d), 1e-10);
    }

    [Property(MaxTest = 60)]
    public void Quantile_OfCdf_GivesTheValueBack(PositiveInt rawK, PositiveInt rawDf, PositiveInt rawD, bool twoSided)
    {
        var (k, df, d) = (1 + (rawK.Get % 15), 1 + (rawDf.Get % 60), 0.2 + (rawD.Get % 100 / 20.0));
        var dunnett = Dunnett.ForSizes(5, [.. Enumerable.Range(3, k)], df, twoSided ? Sidedness.TwoSided : Sidedness.Above);
        var (lower, upper) = (dunnett.Cdf(d), dunnett.Upper(d));
        Agreement.Absolute(1, lower + upper, 1e-10);
        Assert.True(lower <= dunnett.Cdf(d + 0.1));
        if (lower > 1e-12)
        {
            Agreement.Relative(d, lower < upper ? dunnett.Quantile(lower) : dunnett.UpperQuantile(upper), 1e-8);
        }
    }

    [Fact]
    public void Constructor_OutsideItsRange_Refuses()
    {
        var error = Assert.Throws<ArgumentException>(() => new Dunnett([], 10, Sidedness.TwoSided));
        Assert.Contains("need at least 1 treatment; found none", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => new Dunnett([1.0], 10, Sidedness.TwoSided));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Dunnett([double.NaN], 10, Sidedness.TwoSided));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Dunnett([0.5], double.NaN, Sidedness.TwoSided));
        Assert.Throws<ArgumentOutOfRangeException>(() => Dunnett.ForSizes(0, [4], 10, Sidedness.TwoSided));
        Assert.Throws<ArgumentOutOfRangeException>(() => Dunnett.ForEqualSizes(0, 10, Sidedness.TwoSided));
        Assert.Throws<ArgumentOutOfRangeException>(() => Dunnett.ForEqualSizes(3, 10, Sidedness.TwoSided).Upper(double.NaN));
    }
}
