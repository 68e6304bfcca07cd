using LabPipeline.Science.Statistics.Distributions;

namespace LabPipeline.Science.Tests.Statistics.Distributions;

/// <summary>Check values: mpmath 1.2.1 with 50 digits, computed for this file.</summary>
public sealed class SpecialFunctionsTests
{
    [Theory]
    [InlineData(0.5, 0.57236494292470008707)] // ln √π
    [InlineData(3, 0.69314718055994530942)] // ln 2!
    [InlineData(11, 15.104412573075515295)] // ln 10!
    [InlineData(171, 706.57306224578734715)] // ln 170!
    [InlineData(1e-3, 6.9071788853838536826)]
    public void LogGamma_AtKnownPoints_AgreesToFourteenDigits(double x, double expected) =>
        Agreement.Relative(expected, SpecialFunctions.LogGamma(x), 2e-14);

    [Theory]
    [InlineData(0.5, 0.5, 1.1447298858494001741)] // B(1/2, 1/2) = π
    [InlineData(3, 4, -4.0943445622221006848)] // B(3, 4) = 1/60
    [InlineData(1e6, 0.5, -6.33539021105743696)]
    public void LogBeta_AtKnownPoints_AgreesToFourteenDigits(double a, double b, double expected) =>
        Agreement.Relative(expected, SpecialFunctions.LogBeta(a, b), 2e-14);

    [Theory]
    [InlineData(0.5, 0.001, 0.035670591729679885, 0.964329408270320115)]
    [InlineData(0.5, 30, 0.999999999999990514, 9.48573757107384839e-15)]
    [InlineData(2.5, 2.5, 0.58411981300449208, 0.41588018699550792)]
    [InlineData(2.5, 100, 1.0, 2.84062289864153168e-41)]
    [InlineData(50, 20, 1.24589260797193792e-8, 0.99999998754107392)]
    [InlineData(50, 49, 0.462104393600940259, 0.537895606399059741)]
    [InlineData(50, 150, 1.0, 7.41210085732287679e-22)]
    [InlineData(1000, 900, 0.000549902265711782923, 0.999450097734288217)]
    [InlineData(1000, 1300, 0.999999999999999998, 1.87361557157855512e-18)]
    [InlineData(100000, 100500, 0.942896730023971289, 0.0571032699760287114)]
    public void Gamma_InBothTails_AgreesToThirteenDigits(double a, double x, double lower, double upper)
    {
        Agreement.Relative(lower, SpecialFunctions.GammaLower(a, x), 1e-13);
        Agreement.Relative(upper, SpecialFunctions.GammaUpper(a, x), 1e-13);
    }

    [Theory]
    [InlineData(0.5, 0.5, 0.5, 0.5, 0.5)]
    [InlineData(0.25, 2, 3, 0.26171875, 0.73828125)]
    [InlineData(0.0009765625, 0.5, 10, 0.109801285989621768, 0.890198714010378232)]
    [InlineData(0.5, 1000, 1000, 0.5, 0.5)]
    [InlineData(0.4375, 1000, 1000, 1.00294336950072618e-8, 0.999999989970566305)]
    [InlineData(0.25, 30, 500, 1.0, 7.03482208355764065e-33)]
    [InlineData(0.00390625, 1.5, 20000, 1.0, 1.0136853050565503e-33)]
    public void Beta_InBothTails_AgreesToThirteenDigits(double x, double a, double b, double lower, double upper)
    {
        Agreement.Relative(lower, SpecialFunctions.BetaLower(x, a, b), 1e-13);
        Agreement.Relative(upper, SpecialFunctions.BetaUpper(x, a, b), 1e-13);
    }

    [Fact]
    public void Beta_AtTheEnds_IsZeroAndOne()
    {
        Assert.Equal(0, SpecialFunctions.BetaLower(0, 2, 3));
        Assert.Equal(1, SpecialFunctions.BetaLower(1, 2, 3));
        Assert.Equal(1, SpecialFunctions.BetaUpper(0, 2, 3));
        Assert.Equal(0, SpecialFunctions.BetaUpper(1, 2, 3));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.PositiveInfinity)]
    public void Functions_WhenAParameterIsOutsideItsRange_SayWhatWasExpected(double bad)
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.LogGamma(bad));
        Assert.Contains("must be above 0 and finite", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.LogBeta(bad, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.GammaLower(bad, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.BetaUpper(0.5, 1, bad));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.BetaLower(1.5, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SpecialFunctions.GammaUpper(1, -0.5));
    }
}
