using System.Globalization;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Tests.Text;

/// <summary>IEEE 754 binary64 keeps every decimal of 15 significant digits (DBL_DIG); decimal(28,12) keeps 16 digits before the mark and 12 after.</summary>
public sealed class StoredPrecisionTests
{
    [Theory]
    [InlineData("182.2222222222222222", "182.222222222222")]
    [InlineData("1234.1234567890125", "1234.12345678901")]
    [InlineData("999999999999999.4", "999999999999999")]
    [InlineData("0.0000000000005", "0.000000000000")]
    [InlineData("0.0000000000015", "0.000000000002")]
    [InlineData("-4321.00000000000049", "-4321.00000000000")]
    public void Fit_WhenValueIsLonger_RoundsHalfToEven(string value, string expected) =>
        Assert.Equal(decimal.Parse(expected, CultureInfo.InvariantCulture), StoredPrecision.Fit(decimal.Parse(value, CultureInfo.InvariantCulture)));

    [Fact]
    public void Fit_WhenValueIsTooLarge_GivesNothing()
    {
        Assert.Null(StoredPrecision.Fit(1_000_000_000_000_000m));
        Assert.Null(StoredPrecision.Fit(decimal.MinValue));
    }

    [FsCheck.Xunit.Property(MaxTest = 2000)]
    public bool Fit_WhenItGivesAValue_ADoubleKeepsIt(decimal value) =>
        StoredPrecision.Fit(value) is not { } stored || (decimal)(double)stored == stored;
}
