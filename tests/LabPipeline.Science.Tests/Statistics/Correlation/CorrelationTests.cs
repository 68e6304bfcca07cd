using FsCheck;
using FsCheck.Xunit;
using LabPipeline.Science.Statistics;
using LabPipeline.Science.Statistics.Correlation;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Correlation;

public sealed class CorrelationTests
{
    public static TheoryData<string, string, string, string> Sets => new()
    {
        { "anscombe1", "G_data_anscombe.csv", "x1", "y1" },
        { "anscombe2", "G_data_anscombe.csv", "x2", "y2" },
        { "anscombe3", "G_data_anscombe.csv", "x3", "y3" },
        { "anscombe4", "G_data_anscombe.csv", "x4", "y4" },
        { "cars speed-dist", "G_data_cars.csv", "speed", "dist" },
        { "women height-weight", "G_data_women.csv", "height", "weight" },
        { "swiss Fertility-Education", "G_data_swiss.csv", "Fertility", "Education" },
    };

    /// <summary>G_correlations.csv, R 4.2.2, 12 digits.</summary>
    [Theory]
    [MemberData(nameof(Sets))]
    public void Coefficients_OnTheDataSets_AgreeWithTheCheckFile(string dataset, string file, string first, string second)
    {
        var row = ReferenceTable.Load("G_correlations.csv").Find("dataset", dataset);
        var rows = ReferenceTable.Load(file).Rows;
        double[] x = [.. rows.Select(one => one.Number(first))];
        double[] y = [.. rows.Select(one => one.Number(second))];

        var pearson = PearsonCorrelation.Of(x, y, 0.05);
        Agreement.Relative(row.Number("pearson_r"), pearson.Coefficient, 1e-11, row);
        Agreement.Relative(row.Number("t"), pearson.T, 1e-10, row);
        Assert.Equal(row.Number("df"), pearson.Df);
        Agreement.Relative(row.Number("p_pearson"), pearson.P, 1e-9, row);
        Agreement.Relative(row.Number("CI95_low"), pearson.Interval!.Value.Low, 1e-10, row);
        Agreement.Relative(row.Number("CI95_high"), pearson.Interval!.Value.High, 1e-10, row);

        var spearman = SpearmanCorrelation.Of(x, y, 0.05);
        Agreement.Relative(row.Number("spearman_rho"), spearman.Coefficient, 1e-11, row);
        if (spearman.Coefficient < 1)
        {
            Agreement.Relative(row.Number("p_spearman_t_approx"), spearman.P, 1e-9, row);
        }

        var line = SimpleRegression.Of(x, y);
        Agreement.Relative(row.Number("slope"), line.Slope, 1e-11, row);
        Agreement.Relative(row.Number("intercept"), line.Intercept, 1e-10, row);
        Agreement.Relative(row.Number("resid_SD"), line.ResidualStandardDeviation, 1e-11, row);
    }

    /// <summary>
    /// The women data rise without exception. The check file's p of 3.5e-101 is the rounding error of a rho of 1 put through t;
    /// of the 15! orderings exactly two are perfect (counting), so ours is 2/15!.
    /// </summary>
    [Fact]
    public void Spearman_WhenTheOrderIsPerfect_CountsOrderings()
    {
        var rows = ReferenceTable.Load("G_data_women.csv").Rows;
        var spearman = SpearmanCorrelation.Of([.. rows.Select(row => row.Number("height"))], [.. rows.Select(row => row.Number("weight"))], 0.05);

        Assert.Equal(1, spearman.Coefficient);
        Agreement.Relative(2 / 1307674368000.0, spearman.P, 1e-12);
        Assert.Null(spearman.Interval);
        Agreement.Relative(1 / 3.0, SpearmanCorrelation.Of([1, 2, 3], [9, 5, 1], 0.05).P, 1e-12);
    }

    [Property(MaxTest = 100)]
    public void Spearman_UnderAnyRisingTransform_IsTheSame(int[] raw)
    {
        double[] x = [.. raw.Select(value => (double)(value % 20))];
        double[] y = [.. raw.Select((value, index) => (double)((value + (7 * index)) % 13))];
        if (x.Distinct().Count() > 1 && y.Distinct().Count() > 1 && x.Length > 2)
        {
            var plain = SpearmanCorrelation.Of(x, y, 0.05);
            var bent = SpearmanCorrelation.Of([.. x.Select(value => Math.Exp(value / 5))], [.. y.Select(value => (value * value * value) - 4)], 0.05);
            Assert.Equal(plain.Coefficient, bent.Coefficient);
            Assert.InRange(plain.Coefficient, -1, 1);
        }
    }

    [Fact]
    public void Pearson_OnAPerfectLine_HasNoInterval()
    {
        var estimate = PearsonCorrelation.Of([1, 2, 3, 4], [2, 4, 6, 8], 0.05);
        Assert.Equal(1, estimate.Coefficient);
        Assert.Null(estimate.Interval);
        Assert.Null(PearsonCorrelation.Of([1, 2, 3], [2, 4, 5], 0.05).Interval);
    }

    [Fact]
    public void Correlations_WhenAVariableIsConstant_AreNotEstimable()
    {
        var error = Assert.Throws<NotEstimableException>(() => PearsonCorrelation.Of([4.1, 4.1, 4.1], [1, 2, 3], 0.05));
        Assert.Equal("The correlation is not estimable: all 3 values of x are equal to 4.1.", error.Message);
        Assert.Throws<NotEstimableException>(() => SpearmanCorrelation.Of([1, 2, 3], [5, 5, 5], 0.05));
        Assert.Throws<NotEstimableException>(() => SimpleRegression.Of([5, 5, 5], [1, 2, 3]));
    }

    [Fact]
    public void Correlations_OnBadInput_Refuse()
    {
        Assert.Throws<ArgumentException>(() => PearsonCorrelation.Of([1, 2], [1, 2], 0.05));
        Assert.Throws<ArgumentException>(() => PearsonCorrelation.Of([1, 2, 3], [1, 2, 3, 4], 0.05));
        Assert.Throws<ArgumentException>(() => SpearmanCorrelation.Of([1, 2, double.NaN], [1, 2, 3], 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => PearsonCorrelation.Of([1, 2, 3], [1, 2, 4], 0));
    }
}
