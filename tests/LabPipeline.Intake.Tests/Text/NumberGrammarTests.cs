using System.Globalization;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Tests.Text;

/// <summary>Spellings from the project's own grammar (docs/specs/intake-profile.md); the list follows the failures known of general parsers.</summary>
public sealed class NumberGrammarTests
{
    private static readonly NumberFormat PointGroups = new(',', GroupMark.Point);
    private static readonly NumberFormat CommaGroups = new('.', GroupMark.Comma);
    private static readonly NumberFormat Exponents = new('.', GroupMark.None, AllowExponent: true);

    [Theory]
    [InlineData("0", "0")]
    [InlineData("-0", "0")]
    [InlineData("+12.5", "12.5")]
    [InlineData("-0.002", "-0.002")]
    [InlineData("007.50", "7.50")]
    [InlineData("0.000000000001", "0.000000000001")]
    [InlineData("123456789012345", "123456789012345")]
    [InlineData("123.456789012345", "123.456789012345")]
    [InlineData("000000000000000000000001", "1")]
    public void Parse_WhenDecimalPoint_IsExact(string text, string expected)
    {
        Assert.Equal(NumberFault.None, NumberGrammar.Parse(text, NumberFormat.Point, out var value));
        Assert.Equal(decimal.Parse(expected, CultureInfo.InvariantCulture), value);
    }

    [Theory]
    [InlineData("0,052", NumberFault.WrongMark)]
    [InlineData("5,4", NumberFault.WrongMark)]
    [InlineData("1,234.5", NumberFault.WrongMark)]
    [InlineData("1.2.3", NumberFault.WrongMark)]
    [InlineData("", NumberFault.NotANumber)]
    [InlineData("-", NumberFault.NotANumber)]
    [InlineData("--1", NumberFault.NotANumber)]
    [InlineData("+-1", NumberFault.NotANumber)]
    [InlineData(".5", NumberFault.NotANumber)]
    [InlineData("5.", NumberFault.NotANumber)]
    [InlineData("-.5", NumberFault.NotANumber)]
    [InlineData("1 234", NumberFault.NotANumber)]
    [InlineData(" 1", NumberFault.NotANumber)]
    [InlineData("1 ", NumberFault.NotANumber)]
    [InlineData("1-", NumberFault.NotANumber)]
    [InlineData("(1)", NumberFault.NotANumber)]
    [InlineData("1%", NumberFault.NotANumber)]
    [InlineData("$1", NumberFault.NotANumber)]
    [InlineData("0x1F", NumberFault.NotANumber)]
    [InlineData("1_000", NumberFault.NotANumber)]
    [InlineData("NaN", NumberFault.NotANumber)]
    [InlineData("Infinity", NumberFault.NotANumber)]
    [InlineData("-∞", NumberFault.NotANumber)]
    [InlineData("ND", NumberFault.NotANumber)]
    [InlineData("<0.005", NumberFault.NotANumber)]
    [InlineData("5.4\0", NumberFault.NotANumber)]
    [InlineData("5\u066B4", NumberFault.NotANumber)]
    [InlineData("\u0665", NumberFault.NotANumber)]
    [InlineData("\uFF15", NumberFault.NotANumber)]
    [InlineData("\u22125", NumberFault.NotANumber)]
    [InlineData("1E5", NumberFault.ExponentNotAllowed)]
    [InlineData("1e-5", NumberFault.ExponentNotAllowed)]
    [InlineData("1E400", NumberFault.ExponentNotAllowed)]
    [InlineData("1234567890123456", NumberFault.TooManyDigits)]
    [InlineData("0.1234567890123456", NumberFault.TooManyDigits)]
    [InlineData("99999999999999999999999999999999999999", NumberFault.TooManyDigits)]
    [InlineData("0.0000000000001", NumberFault.TooManyDecimals)]
    public void Parse_WhenNotWrittenAsDeclared_Refuses(string text, NumberFault expected)
    {
        Assert.Equal(expected, NumberGrammar.Parse(text, NumberFormat.Point, out var value));
        Assert.Equal(0m, value);
    }

    [Theory]
    [InlineData("1.234,5", "1234.5")]
    [InlineData("1.234.567", "1234567")]
    [InlineData("12.345", "12345")]
    [InlineData("1234,5", "1234.5")]
    [InlineData("0,052", "0.052")]
    [InlineData("-999.999,1", "-999999.1")]
    public void Parse_WhenGroupsAreComplete_ReadsThem(string text, string expected)
    {
        Assert.Equal(NumberFault.None, NumberGrammar.Parse(text, PointGroups, out var value));
        Assert.Equal(decimal.Parse(expected, CultureInfo.InvariantCulture), value);
    }

    [Theory]
    [InlineData("1,23")]
    [InlineData("1,2345")]
    [InlineData("1234,567")]
    [InlineData("0,052")]
    [InlineData("01,234")]
    [InlineData("1,234,56")]
    [InlineData("1,,234")]
    [InlineData("1,")]
    public void Parse_WhenGroupIsNotOfThree_Refuses(string text) =>
        Assert.Equal(NumberFault.BadGrouping, NumberGrammar.Parse(text, CommaGroups, out _));

    [Theory]
    [InlineData("1 234,5", GroupMark.Space)]
    [InlineData("1\u00A0234,5", GroupMark.Space)]
    [InlineData("1\u202F234,5", GroupMark.Space)]
    [InlineData("1'234,5", GroupMark.Apostrophe)]
    [InlineData("1\u2019234,5", GroupMark.Apostrophe)]
    public void Parse_WhenGroupMarkIsDeclared_ReadsEverySpellingOfIt(string text, GroupMark mark)
    {
        Assert.Equal(NumberFault.None, NumberGrammar.Parse(text, new NumberFormat(',', mark), out var value));
        Assert.Equal(1234.5m, value);
    }

    [Fact]
    public void Parse_WhenGroupMarksAreMixed_Refuses() =>
        Assert.Equal(NumberFault.NotANumber, NumberGrammar.Parse("1 234\u00A0567", new NumberFormat(',', GroupMark.Space), out _));

    [Theory]
    [InlineData("1.5E3", "1500")]
    [InlineData("1.5e-3", "0.0015")]
    [InlineData("1.0E-12", "0.000000000001")]
    [InlineData("0E-99", "0")]
    [InlineData("2E+14", "200000000000000")]
    public void Parse_WhenExponentIsDeclared_IsExact(string text, string expected)
    {
        Assert.Equal(NumberFault.None, NumberGrammar.Parse(text, Exponents, out var value));
        Assert.Equal(decimal.Parse(expected, CultureInfo.InvariantCulture), value);
    }

    [Theory]
    [InlineData("1E15", NumberFault.TooLarge)]
    [InlineData("1E400", NumberFault.TooLarge)]
    [InlineData("1E-13", NumberFault.TooManyDecimals)]
    [InlineData("1E-400", NumberFault.TooManyDecimals)]
    [InlineData("1E", NumberFault.NotANumber)]
    [InlineData("1E+", NumberFault.NotANumber)]
    [InlineData("1E1.5", NumberFault.NotANumber)]
    [InlineData("1E0001", NumberFault.NotANumber)]
    [InlineData("E5", NumberFault.NotANumber)]
    public void Parse_WhenExponentDoesNotFit_Refuses(string text, NumberFault expected) =>
        Assert.Equal(expected, NumberGrammar.Parse(text, Exponents, out _));

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("fr-FR")]
    public void Parse_WhenCultureIsAnother_IsTheSame(string culture)
    {
        using var _ = new InCulture(culture);

        Assert.Equal(NumberFault.None, NumberGrammar.Parse("1234.5", NumberFormat.Point, out var value));
        Assert.Equal(1234.5m, value);
        Assert.Equal(NumberFault.WrongMark, NumberGrammar.Parse("1234,5", NumberFormat.Point, out var _));
    }
}
