using System.Globalization;
using LabPipeline.Science.Repeatability;
using LabPipeline.Science.Statistics;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Repeatability;

/// <summary>Grubbs and Cochran against E_grubbs_one_outlier.csv and E_cochran.csv (computed, agreeing with the published tables); Mandel against ISO 5725-2.</summary>
public sealed class OutlierTests
{
    [Fact]
    public void GrubbsCriticalValue_OnTheWholeTable_AgreesToFourDecimals()
    {
        foreach (var row in ReferenceTable.Load("E_grubbs_one_outlier.csv").Rows)
        {
            foreach (var alpha in new[] { 0.1, 0.05, 0.025, 0.01 })
            {
                var level = alpha.ToString(CultureInfo.InvariantCulture);
                Assert.Equal(row.Number("G_one_sided_a" + level), Grubbs.CriticalValue(row.Count("n"), alpha, twoSided: false), 0.00006);
                Assert.Equal(row.Number("G_two_sided_a" + level), Grubbs.CriticalValue(row.Count("n"), alpha, twoSided: true), 0.00006);
            }
        }
    }

    [Fact]
    public void CochranCriticalValue_OnTheWholeTable_AgreesToFourDecimals()
    {
        foreach (var row in ReferenceTable.Load("E_cochran.csv").Rows)
        {
            foreach (var alpha in new[] { 0.05, 0.01 })
            {
                var expected = row.Number("C_" + alpha.ToString(CultureInfo.InvariantCulture));
                Assert.Equal(expected, Cochran.CriticalValue(row.Count("p_groups"), row.Count("n_replicates_per_group"), alpha), 0.00006);
            }
        }
    }

    [Fact]
    public void Grubbs_OnAKnownExample_FlagsTheOutlier()
    {
        // NIST/SEMATECH e-Handbook 1.3.5.17.1, mass spectrometer data: G = 2.4687, critical value 2.032 one-sided at 5 % (from memory; recomputed).
        double[] values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

        var verdict = Grubbs.Test(values);

        Assert.Equal(7, verdict.Index);
        Assert.Equal(2.4687, verdict.Statistic, 0.0001);
        Assert.Equal(2.032, Grubbs.CriticalValue(8, 0.05, twoSided: false), 0.0005);
        Assert.True(verdict.IsFlagged);
    }

    [Fact]
    public void Cochran_OnOneNoisyGroup_FlagsIt()
    {
        // By hand: variances 1, 1, 1, 16 of n = 3: C = 16/19 = 0.8421 > 0.7679.
        var verdict = Cochran.Test([1, 1, 1, 4], 3);

        Assert.Equal((3, 16.0 / 19), (verdict.Index, verdict.Statistic));
        Assert.True(verdict.IsFlagged);
        Assert.False(Cochran.Test([1, 1, 1, 2], 3).IsFlagged);
    }

    [Theory]
    [InlineData(3, 1.15, 1.15)]
    [InlineData(4, 1.49, 1.42)]
    [InlineData(5, 1.72, 1.57)]
    [InlineData(6, 1.87, 1.66)]
    [InlineData(7, 1.98, 1.71)]
    [InlineData(8, 2.06, 1.75)]
    [InlineData(9, 2.13, 1.78)]
    [InlineData(10, 2.18, 1.80)]
    public void MandelCriticalH_AgreesWithTheTableOfTheStandard(int groups, double onePercent, double fivePercent)
    {
        // ISO 5725-2:1994, indicators for Mandel's h and k (from memory, two decimals).
        Assert.Equal(onePercent, Mandel.CriticalH(groups, 0.01), 0.0051);
        Assert.Equal(fivePercent, Mandel.CriticalH(groups, 0.05), 0.0051);
    }

    [Fact]
    public void MandelCriticalK_ForTwoGroups_FollowsTheFRatio()
    {
        // For p = 2 the condition k² = 2 s1²/(s1² + s2²) beyond its limit is s1²/s2² > F(0.05; 2, 2) = 19 for n = 3: k = sqrt(2 x 19/20).
        Assert.Equal(Math.Sqrt(38.0 / 20), Mandel.CriticalK(2, 3, 0.05), 1e-9);
    }

    [Fact]
    public void MandelStatistics_OnASmallExample_AreTheDefinitions()
    {
        // By hand: means 2, 4, 9 (grand mean 5, s 3.605551), variances 2, 2, 8 (mean 4).
        var statistics = Mandel.Statistics([[1, 3], [3, 5], [7, 11]]);

        Assert.Equal([-3 / Math.Sqrt(13), -1 / Math.Sqrt(13), 4 / Math.Sqrt(13)], statistics.Select(statistic => statistic.H), Near);
        Assert.Equal([Math.Sqrt(0.5), Math.Sqrt(0.5), Math.Sqrt(2)], statistics.Select(statistic => statistic.K), Near);
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.Test([1, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.Test([1, 2, double.NaN]));
        Assert.Throws<NotEstimableException>(() => Grubbs.Test([2, 2, 2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Cochran.Test([1], 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => Cochran.Test([1, -1], 2));
        Assert.Throws<NotEstimableException>(() => Cochran.Test([0, 0], 2));
        Assert.Throws<ArgumentException>(() => Mandel.Statistics([[1, 2], [1, 2]]));
        Assert.Throws<NotEstimableException>(() => Mandel.Statistics([[1, 1], [2, 2], [3, 3]]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Mandel.CriticalH(3, 1.5));
    }

    private static bool Near(double left, double right) => Math.Abs(left - right) < 1e-12;
}
