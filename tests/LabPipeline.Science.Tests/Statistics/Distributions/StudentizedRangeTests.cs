using System.Diagnostics;
using FsCheck;
using FsCheck.Xunit;
using LabPipeline.Science.Statistics.Distributions;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Statistics.Distributions;

public sealed class StudentizedRangeTests(ITestOutputHelper output)
{
    [Fact]
    public void Quantile_OnTheIntegrationTable_AgreesToEightDecimals()
    {
        var worst = 0.0;
        foreach (var row in ReferenceTable.Load("G_studentized_range_quantiles.csv").Rows)
        {
            var expected = row.Number("q_integration");
            var found = StudentizedRange.Quantile(row.Number("p"), row.Count("k"), Df(row));
            worst = Math.Max(worst, Math.Abs(found - expected));
            // The table shows eight decimals; at df 2 its q near 30 carries about 1e-8 of rounding and solver error.
            Agreement.Absolute(expected, found, 1.5e-8, row);
        }

        output.WriteLine($"Largest difference from the table: {worst:E2}");
    }

    [Fact]
    public void Cdf_OnTheIntegrationTable_AgreesToTenDecimals()
    {
        var worst = 0.0;
        foreach (var row in ReferenceTable.Load("G_studentized_range_cdf.csv").Rows)
        {
            var (q, k, df, expected) = (row.Number("q"), row.Count("k"), Df(row), row.Number("P_integration"));
            var (lower, upper) = (StudentizedRange.Cdf(q, k, df), StudentizedRange.Upper(q, k, df));
            worst = Math.Max(worst, Math.Max(Math.Abs(lower - expected), Math.Abs(1 - upper - expected)));
            Agreement.Absolute(expected, lower, 2e-10, row);
            Agreement.Absolute(1 - expected, upper, 2e-10, row);
        }

        output.WriteLine($"Largest difference from the table: {worst:E2}");
    }

    [Fact]
    public void Quantile_AtLowDf_IsNotTheValueOfCommonSoftware()
    {
        var rows = ReferenceTable.Load("G_studentized_range_quantiles.csv").Rows
            .Where(row => row.Text("df") is "2" or "3" && Relative(row.Number("q_R_qtukey"), row.Number("q_integration")) > 1e-3)
            .ToList();
        Assert.True(rows.Count > 20, $"Only {rows.Count} rows of the table show the error this test guards against.");
        foreach (var row in rows)
        {
            var found = StudentizedRange.Quantile(row.Number("p"), row.Count("k"), Df(row));
            Assert.True(Relative(found, row.Number("q_R_qtukey")) > 5e-4, $"{row}: {found} is the wrong value of q_R_qtukey.");
        }
    }

    /// <summary>Df of mixed models are no whole numbers. Expected: Simpson's rule in both integrals with another program's erfc, 800 by 2000 points, equal to 3e-14 or better with 1500.</summary>
    [Theory]
    [InlineData(3.4, 3, 7.3, 0.1025628734049522)]
    [InlineData(4.1, 12, 23.6, 0.20360512374509)]
    [InlineData(2.7, 4, 5.25, 0.32689374938713)]
    [InlineData(5.9, 12, 33, 0.00945500828737)]
    public void Upper_AtFractionalDf_AgreesWithDirectIntegration(double q, int k, double df, double expected) =>
        Agreement.Absolute(expected, StudentizedRange.Upper(q, k, df), 1e-12, "studentised range");

    [Fact]
    public void Cdf_WithTwoMeans_IsStudentsT()
    {
        // Q = √2 |T| when k = 2, by definition.
        foreach (var df in new[] { 1, 2, 3, 7.5, 40, 1e4, double.PositiveInfinity })
        {
            foreach (var t in new[] { 0.01, 0.7, 2.5, 9, 20 })
            {
                Agreement.Relative(StudentT.TwoSided(t, df), StudentizedRange.Upper(Math.Sqrt(2) * t, 2, df), 1e-9, $"df {df}, t {t}");
            }
        }
    }

    /// <summary>Computed for this file by Gauss-Legendre panels on scipy 1.10.1, another method than ours.</summary>
    [Theory]
    [InlineData(12, 6, 66, 5.364539163260496e-11)]
    [InlineData(20, 4, 30, 4.9291384871051655e-14)]
    [InlineData(15, 10, 10, 2.406143566913253e-05)]
    [InlineData(9, 3, double.PositiveInfinity, 5.897436416604914e-10)]
    [InlineData(60, 5, 3, 0.00011544113450168717)]
    public void Upper_InTheFarTail_KeepsItsLeadingDigits(double q, int k, double df, double expected) =>
        Agreement.Relative(expected, StudentizedRange.Upper(q, k, df), 1e-9);

    [Fact]
    public void Tails_OverAWideGrid_AddToOne()
    {
        foreach (var k in new[] { 2, 3, 10, 30, 100 })
        {
            foreach (var df in new[] { 1, 2, 5, 20, 120, 1e4, double.PositiveInfinity })
            {
                foreach (var q in new[] { 0.3, 1, 3, 6, 25 })
                {
                    // The two are computed by different integrals.
                    var sum = StudentizedRange.Cdf(q, k, df) + StudentizedRange.Upper(q, k, df);
                    Agreement.Absolute(1, sum, 1e-11, $"k {k}, df {df}, q {q}");
                }
            }
        }
    }

    [Fact]
    public void CdfAndQuantile_AtCommonSizes_AreQuick()
    {
        var cdf = Quickest(() => StudentizedRange.Upper(4.2, 8, 24));
        var quantile = Quickest(() => StudentizedRange.UpperQuantile(0.05, 8, 24));
        output.WriteLine($"k 8, df 24: tail {cdf:F3} ms, critical value {quantile:F2} ms.");
        // The aims are 1 ms and 20 ms; a debug build on a busy machine is given ten times as long, and the quickest of 15 rounds counts.
        Assert.True(cdf < 10, $"A tail took {cdf} ms.");
        Assert.True(quantile < 200, $"A critical value took {quantile} ms.");
    }

    [Property(MaxTest = 60)]
    public void Quantile_OfCdf_GivesTheValueBack(PositiveInt rawK, PositiveInt rawDf, PositiveInt rawQ)
    {
        var (k, df, q) = (2 + (rawK.Get % 30), 1 + (rawDf.Get % 60), 0.5 + (rawQ.Get % 100 / 12.0));
        var (lower, upper) = (StudentizedRange.Cdf(q, k, df), StudentizedRange.Upper(q, k, df));
        Assert.True(lower <= StudentizedRange.Cdf(q + 0.1, k, df));
        if (lower > 1e-12)
        {
            var back = lower < upper ? StudentizedRange.Quantile(lower, k, df) : StudentizedRange.UpperQuantile(upper, k, df);
            Agreement.Relative(q, back, 1e-9, $"k {k}, df {df}");
        }
    }

    [Fact]
    public void Functions_OutsideTheirRange_Refuse()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Upper(3, 1, 10));
        Assert.Contains("The number of means must be at least 2; found 1.", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Cdf(double.NaN, 3, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Cdf(3, 3, double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Cdf(3, 3, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Cdf(3, 5000, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Quantile(0, 3, 5));
        Assert.Equal(0, StudentizedRange.Cdf(0, 3, 5));
        Assert.Equal(0, StudentizedRange.Upper(double.PositiveInfinity, 3, 5));
    }

    private static double Quickest(Func<double> work)
    {
        var quickest = double.PositiveInfinity;
        for (var round = 0; round < 15; round++)
        {
            var watch = Stopwatch.StartNew();
            _ = work();
            quickest = Math.Min(quickest, watch.Elapsed.TotalMilliseconds);
        }

        return quickest;
    }

    private static double Relative(double found, double expected) => Math.Abs((found - expected) / expected);

    private static double Df(ReferenceRow row) =>
        row.Text("df") == "Inf" ? double.PositiveInfinity : row.Number("df");
}
