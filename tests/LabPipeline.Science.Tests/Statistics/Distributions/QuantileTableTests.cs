using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Distributions;

/// <summary>t, F and chi-squared against the tables (scipy 1.10.1) and far-tail values from mpmath 1.2.1 with 50 digits.</summary>
public sealed class QuantileTableTests
{
    /// <summary>
    /// The table shows ten decimals, but 30-digit arithmetic finds its cells wrong by up to 2e-9 of their value (df 5,
    /// 0.9995: 6.8688266399 for 6.86882662588), so that much is allowed here; the next test holds us to thirteen digits.
    /// </summary>
    [Fact]
    public void StudentT_OnTheQuantileTable_AgreesWithinTheTablesOwnError()
    {
        var table = ReferenceTable.Load("G_t_quantiles.csv");
        foreach (var row in table.Rows)
        {
            foreach (var column in table.Columns.Skip(1))
            {
                var p = double.Parse(column[2..], System.Globalization.CultureInfo.InvariantCulture);
                var df = row.Number("df");
                Agreement.Relative(row.Number(column), StudentT.Quantile(p, df), 6e-9, $"{row} {column}");
                Agreement.Absolute(p, StudentT.Cdf(row.Number(column), df), 1e-9, $"{row} {column}");
            }
        }
    }

    [Theory]
    [InlineData(1, 0.05, 6.3137515146750431)] // tan(0.45 π)
    [InlineData(2, 0.0005, 31.59905457644362)]
    [InlineData(5, 0.0005, 6.86882662588111)]
    [InlineData(5, 0.025, 2.570581835636316)]
    [InlineData(15, 0.005, 2.946712883475239)]
    [InlineData(30, 0.05, 1.697260886593958)]
    [InlineData(120, 0.0005, 3.3734537685625)]
    public void StudentT_AtCriticalPoints_AgreesToThirteenDigits(double df, double upper, double expected) =>
        Agreement.Relative(expected, StudentT.UpperQuantile(upper, df), 2e-13);

    [Fact]
    public void FDistribution_OnTheQuantileTable_AgreesToItsEightDecimals()
    {
        foreach (var row in ReferenceTable.Load("G_F_quantiles.csv").Rows)
        {
            var (p, df1, df2) = (row.Number("p"), row.Number("df1"), row.Number("df2"));
            Agreement.Absolute(row.Number("F"), FDistribution.Quantile(p, df1, df2), 0.6e-8, row);
            Agreement.Absolute(1 - p, FDistribution.Upper(row.Number("F"), df1, df2), 1e-9, row);
        }
    }

    [Theory]
    [InlineData(0.001, 5, 0.499620393386098825)]
    [InlineData(2, 3.5, 0.0630692612879567673)]
    [InlineData(10, 4, 0.000281001811357995578)]
    [InlineData(40, 12, 1.92561479038601691e-14)]
    [InlineData(1000, 2, 4.99999250001249998e-7)]
    [InlineData(8.5, 30.25, 8.15075379530301312e-10)]
    [InlineData(12, 1000, 2.16202869338726373e-31)]
    [InlineData(6, 1000000, 9.86924906177217335e-10)]
    [InlineData(1e20, 3, 1.1026577908435841e-60)]
    public void StudentT_InTheFarTail_KeepsThirteenDigits(double t, double df, double upper)
    {
        Agreement.Relative(upper, StudentT.Upper(t, df), 1e-13);
        Agreement.Relative(t, StudentT.UpperQuantile(upper, df), 1e-12);
        Agreement.Relative(2 * upper, StudentT.TwoSided(-t, df), 1e-13);
    }

    [Theory]
    [InlineData(0.01, 3, 20, 0.998581676019101035)]
    [InlineData(34.7, 5, 66, 3.18750801260910258e-17)]
    [InlineData(100, 8, 24, 1.56284964857388602e-16)]
    [InlineData(201, 8, 1800, 4.03714188575398257e-243)]
    [InlineData(5000, 1, 4, 2.39680335677735417e-7)]
    [InlineData(1.5, 200, 300, 0.000740583066564127473)]
    public void FDistribution_InTheFarTail_KeepsThirteenDigits(double f, double df1, double df2, double upper)
    {
        Agreement.Relative(upper, FDistribution.Upper(f, df1, df2), 2e-13);
        Agreement.Relative(f, FDistribution.UpperQuantile(upper, df1, df2), 1e-12);
    }

    [Fact]
    public void StudentT_WithOneAndTwoDegreesOfFreedom_MatchesItsClosedForms()
    {
        foreach (var t in new[] { 0.01, 0.5, 3, 250, 1e8 })
        {
            // df 1 is Cauchy: arctan(1/t)/π. df 2: 1/2 - t/(2√(2+t²)), rationalised.
            Agreement.Relative(Math.Atan(1 / t) / Math.PI, StudentT.Upper(t, 1), 1e-13);
            var root = Math.Sqrt(2 + (t * t));
            Agreement.Relative(1 / (root * (root + t)), StudentT.Upper(t, 2), 1e-13);
        }
    }

    [Fact]
    public void StudentT_WhenTheSquareOfTOverflows_StillHasATail()
    {
        // Cauchy: 1/(π t).
        Agreement.Relative(1 / (Math.PI * 1e200), StudentT.Upper(1e200, 1), 1e-12);
        Assert.Equal(0, StudentT.Upper(double.PositiveInfinity, 7));
        Assert.Equal(1, StudentT.Upper(double.NegativeInfinity, 7));
    }

    [Fact]
    public void StudentTAndF_WithInfiniteDf_AreTheirLimits()
    {
        Assert.Equal(Normal.Upper(1.7), StudentT.Upper(1.7, double.PositiveInfinity));
        Agreement.Relative(Normal.UpperQuantile(0.025), StudentT.UpperQuantile(0.025, 1e9), 2e-9);
        Agreement.Relative(ChiSquared.UpperQuantile(0.05, 3) / 3, FDistribution.UpperQuantile(0.05, 3, double.PositiveInfinity), 1e-14);
        Agreement.Relative(FDistribution.Upper(4, 3, double.PositiveInfinity), FDistribution.Upper(4, 3, 1e9), 1e-7);
    }

    [Theory]
    [InlineData(0.05, 1, 3.8414588206941236)] // the square of the normal 0.975 quantile
    [InlineData(0.05, 2, 5.9914645471079799)] // -2 ln 0.05
    [InlineData(1e-12, 2, 55.262042231857098)] // -2 ln 1e-12
    public void ChiSquared_AtClosedForms_AgreesToThirteenDigits(double upper, double df, double x)
    {
        Agreement.Relative(x, ChiSquared.UpperQuantile(upper, df), 1e-13);
        Agreement.Relative(upper, ChiSquared.Upper(x, df), 1e-12);
        Agreement.Relative(x, ChiSquared.Quantile(1 - upper, df), 1e-5);
    }

    [Fact]
    public void BetaDistribution_OnPowers_MatchesTheClosedForm()
    {
        // Beta(a, 1) has cdf x^a.
        Agreement.Relative(Math.Pow(0.3, 4.5), BetaDistribution.Cdf(0.3, 4.5, 1), 1e-14);
        Agreement.Relative(Math.Pow(1e-9, 1 / 4.5), BetaDistribution.Quantile(1e-9, 4.5, 1), 1e-13);
    }
}
