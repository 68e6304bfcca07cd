using LabPipeline.Science.Repeatability;
using LabPipeline.Science.Statistics;
using LabPipeline.Testing;

namespace LabPipeline.Science.Tests.Repeatability;

/// <summary>Critical ranges, precision by level and the Horwitz relation; sources stand in each test.</summary>
public sealed class PrecisionModelTests
{
    [Fact]
    public void CriticalRangeFactor_OnEveryRow_AgreesToSixDecimals()
    {
        foreach (var row in ReferenceTable.Load("E_critical_range_factors.csv").Rows)
        {
            var n = row.Count("n");
            var factor = CriticalRange.Factor(n);

            // Quantiles computed with another program; the one-decimal column is ISO 5725-6:1994, table 1 (from memory).
            Assert.Equal(row.Number("q_0.95_n_inf_computed"), factor, 1e-6);
            Assert.Equal(row.Number("q_0.99_n_inf_computed"), CriticalRange.Factor(n, 0.99), 1e-6);
            Assert.Equal(row.Number("f_n_ISO5725_6_1decimal_from_memory"), Math.Round(factor, 1));
            if (n <= 20)
            {
                Assert.Equal(row.Exact("f_n_ISO5725_6_1decimal_from_memory"), CriticalRange.PublishedFactor(n));
            }
        }
    }

    [Fact]
    public void LevelFunction_OnTheExampleOfTheStandard_GivesItsLine()
    {
        // ISO 5725-2:1994, 7.5.2.4 (from memory, and confirmed by recomputing): five levels of equal df lead to s = 0.032 + 0.0154 m after two refits.
        double[] level = [3.94, 8.28, 14.18, 15.59, 20.41];
        double[] deviation = [0.092, 0.179, 0.127, 0.337, 0.393];
        var levels = level.Zip(deviation, (m, s) => new LevelPrecision(m, s, 7)).ToList();

        var line = LevelFunction.Fit(levels, refits: 2);

        Assert.Equal(LevelForm.Linear, line.Form);
        Assert.Equal(0.032, line.Intercept, 0.0005);
        Assert.Equal(0.0154, line.Slope, 0.00005);
        Assert.Equal(0.032 + (0.0154 * 10), line.StandardDeviationAt(10).Value, 0.001);
        Assert.Equal(35, line.DegreesOfFreedom);
        Assert.Equal((3.94, 20.41), (line.LowestLevel, line.HighestLevel));
        // Refitted until it settles, the line moves in the third digit only.
        Assert.Equal(line.Slope, LevelFunction.Fit(levels).Slope, 0.0002);
    }

    [Fact]
    public void LevelFunction_WhenLineIsExact_FindsIt()
    {
        var line = LevelFunction.Fit([new(1, 0.03, 5), new(2, 0.05, 9), new(10, 0.21, 3)]);

        Assert.Equal(0.01, line.Intercept, 1e-12);
        Assert.Equal(0.02, line.Slope, 1e-12);
    }

    [Fact]
    public void LevelFunction_WhenLineWouldStartBelowZero_IsProportional()
    {
        var line = LevelFunction.Fit([new(1, 0.01, 4), new(2, 0.03, 4), new(4, 0.09, 4)]);

        Assert.Equal(LevelForm.Proportional, line.Form);
        // Mean of s/m = (0.01 + 0.015 + 0.0225)/3, by hand (relationship I of ISO 5725-2).
        Assert.Equal(0.0475 / 3, line.Slope, 1e-12);
        Assert.False(line.StandardDeviationAt(0).IsEstimated);
    }

    [Fact]
    public void LevelFunction_WhenLineWouldFall_IsThePooledConstant()
    {
        var line = LevelFunction.Fit([new(1, 0.05, 4), new(2, 0.03, 12)]);

        Assert.Equal(LevelForm.Constant, line.Form);
        Assert.Equal(Math.Sqrt(((4 * 0.0025) + (12 * 0.0009)) / 16), line.StandardDeviationAt(1.5).Value, 1e-12);
    }

    [Fact]
    public void LevelFunction_FromSimulatedPairs_ComesNearTheTruth()
    {
        // 600 pairs with s = 0.004 + 0.05 m: the fitted s_r at mid-level has a relative standard error near 1/sqrt(2 x 600) = 3 %.
        var random = new Random(5725);
        var pairs = Enumerable.Range(0, 600).Select(index =>
        {
            var level = 0.05 + (index * 0.001);
            var sd = 0.004 + (0.05 * level);
            return new DuplicatePair((decimal)(level + (sd * Gauss(random))), (decimal)(level + (sd * Gauss(random))));
        }).ToList();

        var line = LevelFunction.FromPairs(pairs, 6);

        Assert.Equal(0.004 + (0.05 * 0.35), line.StandardDeviationAt(0.35).Value, 4 * 0.03 * 0.0215);
        Assert.Equal(600, line.DegreesOfFreedom);
    }

    [Fact]
    public void Horwitz_OnEveryRow_AgreesToFourDecimals()
    {
        // AOAC Guidelines, Appendix F (2012).
        foreach (var row in ReferenceTable.Load("E_horwitz.csv").Rows)
        {
            var c = row.Number("mass_fraction_C");
            var predicted = Horwitz.ReproducibilityPercent(c, MeasurandKind.Concentration).Value;

            Assert.Equal(row.Number("PRSD_R_pct_2C^-0.15"), predicted, 0.00006);
            Assert.Equal(row.Number("RSD_r_half_pct"), Horwitz.RepeatabilityPercent(c, MeasurandKind.Concentration).Value, 0.00006);
            Assert.Equal(row.Number("RSD_r_two_thirds_pct"), Horwitz.LenientRepeatabilityPercent(c, MeasurandKind.Concentration).Value, 0.00006);
            Assert.Equal(row.Number("HorRat_r_0.3_lower_RSD_pct"), Horwitz.LowestHorRat * predicted, 0.00006);
            Assert.Equal(row.Number("HorRat_r_1.3_upper_RSD_pct"), Horwitz.HighestHorRat * predicted, 0.00006);
            Assert.Equal(row.Number("duplicate_RPD_limit_pct_2.8xhalf"), Horwitz.DuplicateLimitPercent(c, MeasurandKind.Concentration).Value, 0.00006);
            Assert.Equal(0.5, Horwitz.HorRat(predicted / 2, c, MeasurandKind.Concentration).Value, 1e-12);
        }
    }

    [Theory]
    [InlineData(MeasurandKind.PhysicalProperty)]
    [InlineData(MeasurandKind.MethodDefined)]
    public void Horwitz_WhenItDoesNotApply_IsNotEstimable(MeasurandKind kind)
    {
        Assert.False(Horwitz.ReproducibilityPercent(0.001, kind).IsEstimated);
        Assert.False(Horwitz.DuplicateLimitPercent(0.001, kind).IsEstimated);
        Assert.Contains("does not apply", Horwitz.HorRat(1, 0.001, kind).WhyNot, StringComparison.Ordinal);
    }

    [Fact]
    public void Inputs_WhenOutOfRange_AreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Horwitz.ReproducibilityPercent(1.5, MeasurandKind.Concentration));
        Assert.Throws<ArgumentOutOfRangeException>(() => Horwitz.ReproducibilityPercent(1e-9, MeasurandKind.Concentration));
        Assert.Throws<ArgumentOutOfRangeException>(() => CriticalRange.Factor(1));
        Assert.Throws<ArgumentException>(() => LevelFunction.Fit([new(1, 0.05, 4), new(1, 0.03, 12)]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new LevelPrecision(1, 0, 4));
        Assert.Throws<ArgumentException>(() => LevelFunction.FromPairs([new(1m, 1.1m)], 2));
        Assert.Throws<NotEstimableException>(() => LevelFunction.FromPairs([new(1m, 1m), new(1m, 1m), new(2m, 2.1m), new(2m, 2.1m)], 2));
    }

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
