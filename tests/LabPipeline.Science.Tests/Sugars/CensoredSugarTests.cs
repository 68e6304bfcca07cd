using LabPipeline.Science.Sugars;
using LabPipeline.Science.Units;

namespace LabPipeline.Science.Tests.Sugars;

/// <summary>Results below the quantitation limit. The rule that the limit passes through the same V, DF and m is the laboratory's (no source).</summary>
public sealed class CensoredSugarTests
{
    private static readonly Extraction Usual = new(250m, DilutionFactor.None, 50m);

    [Fact]
    public void MilligramsPerGram_WhenReadingIsBelowItsLimit_CarriesTheLimit()
    {
        // 0.005 g/L x 250 mL / 50 g = 0.025 mg/g, worked by hand.
        var content = Usual.MilligramsPerGram(LabResult.Of(0.003m, 0.005m));

        Assert.Equal(ResultKind.BelowLimit, content.Kind);
        Assert.Equal(0.025m, content.Limit);
        Assert.Equal(0.015m, content.Raw);
        Assert.Throws<InvalidOperationException>(() => content.Value);
    }

    [Fact]
    public void LabResult_WhenEqualToItsLimit_IsMeasured() => Assert.Equal(ResultKind.Measured, LabResult.Of(0.005m, 0.005m).Kind);

    [Fact]
    public void LabResult_WhenReadAsText_ShowsTheLimitNeverZero() => Assert.Equal("<0.005", LabResult.Below(0.005m).ToString());

    [Fact]
    public void Sucrose_WhenDifferenceIsNegative_IsBelowLimitWithItsSign()
    {
        var sucrose = Inversion.Sucrose(LabResult.Of(0.044m, 0.005m), LabResult.Of(0.046m, 0.005m));

        Assert.Equal(ResultKind.BelowLimit, sucrose.Kind);
        Assert.Equal(-0.0038m, decimal.Round(sucrose.Raw!.Value, 6));
        // 1.90000333 x 0.005 x sqrt 2 = 0.013435, by hand.
        Assert.Equal(0.013435m, decimal.Round(sucrose.Limit!.Value, 6));
    }

    [Fact]
    public void Sucrose_WhenFreeGlucoseHasNoNumber_IsAnInterval()
    {
        var sucrose = Inversion.Sucrose(LabResult.Of(0.171m, 0.005m), LabResult.Below(0.005m));

        Assert.Equal(ResultKind.Between, sucrose.Kind);
        Assert.Equal(decimal.Round(0.166m * Inversion.SucrosePerGlucose, 10), decimal.Round(sucrose.Low, 10));
        Assert.Equal(decimal.Round(0.171m * Inversion.SucrosePerGlucose, 10), decimal.Round(sucrose.High, 10));
        Assert.Null(sucrose.Raw);
        Assert.Throws<InvalidOperationException>(() => sucrose.Value);
    }

    [Fact]
    public void GlucoseSucroseRatio_WhenEitherIsNotMeasured_IsNotEstimable()
    {
        Assert.False(FreshWeight.GlucoseSucroseRatio(LabResult.Below(0.025m), LabResult.Of(1.2m)).IsEstimated);
        Assert.False(FreshWeight.GlucoseSucroseRatio(LabResult.Of(0.21m), LabResult.Of(-0.019m)).IsEstimated);
        var ratio = FreshWeight.GlucoseSucroseRatio(LabResult.Of(0.21m), LabResult.Of(0m));
        Assert.Contains("zero", ratio.WhyNot, StringComparison.Ordinal);
        Assert.Null(ratio.OrNull);
        Assert.Throws<InvalidOperationException>(() => ratio.Value);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void LabResult_WhenLimitIsNotAboveZero_IsRefused(int limit)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => LabResult.Below(limit));
        Assert.Throws<ArgumentOutOfRangeException>(() => LabResult.Of(1m, limit));
        Assert.Throws<ArgumentOutOfRangeException>(() => LabResult.Of(1m).Scale(limit));
        Assert.Throws<ArgumentException>(() => LabResult.Between(1m, limit));
    }

    [Fact]
    public void Uncertainty_OfAProduct_CombinesRelativeUncertaintiesInSquares()
    {
        // GUM 5.1.6: relative variances of a product add. 2 %, 0.1 %, 0, 0.02 % give sqrt(4.0104) % = 2.00260 %; y = 0.0225 x 250 x 5 / 40 = 0.703125.
        var content = SugarUncertainty.MilligramsPerGram(new(0.0225, 0.00045), new(250, 0.25), new(5, 0), new(40, 0.008));

        Assert.Equal(0.703125, content.Value, 1e-12);
        Assert.Equal(0.703125 * Math.Sqrt((0.02 * 0.02) + (0.001 * 0.001) + (0.0002 * 0.0002)), content.StandardUncertainty, 1e-12);
        Assert.Equal(2 * content.StandardUncertainty, content.Expanded(), 1e-12);
    }

    [Fact]
    public void Uncertainty_OfSucroseByInversion_AgreesWithNumericalDerivatives()
    {
        double[] x = [0.171, 0.046, 250, 1, 50];
        double[] u = [0.003, 0.001, 0.3, 0.01, 0.02];
        static double Model(double[] v) => (v[0] - v[1]) * (342.297 / 180.156) * v[2] * v[3] / v[4];
        var variance = 0.0;
        for (var index = 0; index < x.Length; index++)
        {
            var (up, down) = ((double[])x.Clone(), (double[])x.Clone());
            up[index] += u[index];
            down[index] -= u[index];
            variance += Math.Pow((Model(up) - Model(down)) / 2, 2);
        }

        var sucrose = SugarUncertainty.SucroseByInversion(new(x[0], u[0]), new(x[1], u[1]), new(x[2], u[2]), new(x[3], u[3]), new(x[4], u[4]));

        Assert.Equal(1.187502, sucrose.Value, 1e-6);
        // Central differences with steps of one standard uncertainty (GUM 5.1.3 note 2); the model is linear in all inputs but the mass.
        Assert.Equal(Math.Sqrt(variance), sucrose.StandardUncertainty, 1e-7);
    }

    [Fact]
    public void UncertainValue_WhenNotANumber_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new UncertainValue(double.NaN, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new UncertainValue(1, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new UncertainValue(1, 0) / new UncertainValue(0, 1));
    }
}
