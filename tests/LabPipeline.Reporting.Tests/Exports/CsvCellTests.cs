using System.Globalization;
using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using LabPipeline.Reporting.Exports;

namespace LabPipeline.Reporting.Tests.Exports;

public sealed partial class CsvCellTests
{
    private const int MostDigits = 15;
    private const int MostDecimals = 12;

    /// <remarks>Leading characters: OWASP, "CSV Injection" (= + - @ tab, carriage return); the cells are of our own making in the shapes it describes.</remarks>
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("=HYPERLINK(A1)", "'=HYPERLINK(A1)")]
    [InlineData("+1+1", "'+1+1")]
    [InlineData("-1+1", "'-1+1")]
    [InlineData("-0.052", "'-0.052")]
    [InlineData("-", "'-")]
    [InlineData("@SUM(1,1)", "\"'@SUM(1,1)\"")]
    [InlineData("\t=1+1", "'\t=1+1")]
    [InlineData("\r=1+1", "\"'\r=1+1\"")]
    [InlineData("=1+1\";=1+1", "\"'=1+1\"\";=1+1\"")]
    public void Text_WhenASpreadsheetWouldComputeIt_BeginsWithASingleQuote(string text, string cell) => Assert.Equal(cell, CsvCell.Of(text));

    [Theory]
    [InlineData("25KN02003A")]
    [InlineData("1E5")]
    [InlineData("KT-104")]
    [InlineData("a=b")]
    [InlineData("2026-01-14")]
    [InlineData("'quoted'")]
    [InlineData("µg/mL")]
    public void Text_WhenNothingIsSpecialAboutIt_IsWrittenAsItIs(string text) => Assert.Equal(text, CsvCell.Of(text));

    /// <remarks>RFC 4180, section 2, rules 6 and 7.</remarks>
    [Theory]
    [InlineData("KT-104, 280", "\"KT-104, 280\"")]
    [InlineData("the \"old\" balance", "\"the \"\"old\"\" balance\"")]
    [InlineData("first\nsecond", "\"first\nsecond\"")]
    [InlineData("first\r\nsecond", "\"first\r\nsecond\"")]
    public void Text_WithACommaQuoteOrLineBreak_IsQuoted(string text, string cell) => Assert.Equal(cell, CsvCell.Of(text));

    [Fact]
    public void Nothing_AndEmptyText_AreToldApart()
    {
        Assert.Equal("", CsvCell.Of(DBNull.Value));
        Assert.Equal("\"\"", CsvCell.Of(""));
    }

    [Property]
    public Property Text_WhenOneGuardIsTakenOff_IsWhatItWas() => Prop.ForAll(
        Gen.Elements("'=+-@\t\rab,\"\n ".ToCharArray()).ArrayOf().Select(symbols => new string(symbols)).ToArbitrary(),
        text => GuardOfTheSpec().Replace(Unquoted(CsvCell.Of(text)), "") == text);

    [Theory]
    [InlineData(-0.052, "-0.052")]
    [InlineData(250.0, "250")]
    [InlineData(0.000000000001, "0.000000000001")]
    [InlineData(1e15, "1000000000000000")]
    [InlineData(0.1 + 0.2, "0.30000000000000004")]
    [InlineData(1e300, "1E+300")]
    public void Number_InBinary_HasTheDigitsItTakesToReadItBack(double value, string cell) => Assert.Equal(cell, CsvCell.Of(value));

    [Fact]
    public void Number_InDecimal_LosesOnlyTheZerosOfItsColumnType()
    {
        Assert.Equal("-0.052", CsvCell.Of(-0.052000000000m));
        Assert.Equal("0.123456789012", CsvCell.Of(0.123456789012m));
        Assert.Equal("250", CsvCell.Of(250.000000000000m));
    }

    [Property(MaxTest = 1000)]
    public Property Number_OfAtMostFifteenDigits_ComesBackFromEitherDatabaseAsItWas() => Prop.ForAll(
        Gen.Choose(0, 9).ArrayOf(MostDigits).SelectMany(digits =>
            Gen.Choose(1, MostDigits).SelectMany(count =>
                Gen.Choose(0, MostDecimals).SelectMany(decimals =>
                    Gen.Elements(1, -1).Select(sign => sign * Whole(digits.Take(count)) / Whole([1, .. new int[decimals]]))))).ToArbitrary(),
        number => Imported(CsvCell.Of(number)) == number && Imported(CsvCell.Of((double)number)) == number);

    [Property(MaxTest = 1000)]
    public bool Number_InBinary_ComesBackAsItWas(NormalFloat number) => double.Parse(CsvCell.Of(number.Get), CultureInfo.InvariantCulture).Equals(number.Get);

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("sv-SE")]
    public void Number_WhateverTheMachinesCulture_HasADecimalPointAndAHyphen(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);

            Assert.Equal(["-1234.5", "-1234.5", "-1234"], [CsvCell.Of(-1234.5), CsvCell.Of(-1234.5m), CsvCell.Of(-1234L)]);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <remarks>ISO 8601 calendar date and UTC instant, as the data dictionary has them.</remarks>
    [Fact]
    public void Time_FromTypedColumns_IsWrittenAsTheTextTheOtherDatabaseHolds()
    {
        Assert.Equal("2026-01-14", CsvCell.Of(new DateTime(2026, 1, 14)));
        Assert.Equal("2026-01-14T15:30:00.250Z", CsvCell.Of(new DateTimeOffset(2026, 1, 14, 9, 30, 0, 250, TimeSpan.FromHours(-6))));
        Assert.Equal("1", CsvCell.Of(true));
    }

    [Fact]
    public void Value_OfAnotherKind_IsRefused() => Assert.Throws<ArgumentException>(() => CsvCell.Of(Array.Empty<byte>()));

    /// <summary>The rule docs/specs/exports.md gives for taking the guard off.</summary>
    [GeneratedRegex(@"^'(?='*[=+\-@\t\r])")]
    private static partial Regex GuardOfTheSpec();

    private static string Unquoted(string cell) => cell.StartsWith('"') ? cell[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : cell;

    private static decimal Imported(string cell) => decimal.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static decimal Whole(IEnumerable<int> digits) => digits.Aggregate(0m, (number, digit) => (number * 10) + digit);
}
