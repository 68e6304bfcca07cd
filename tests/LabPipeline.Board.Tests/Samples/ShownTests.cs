using LabPipeline.Board.Layout;
using LabPipeline.Board.Samples;

namespace LabPipeline.Board.Tests.Samples;

public sealed class ShownTests
{
    [Theory]
    [InlineData("[]", "")]
    [InlineData("[7]", "7")]
    [InlineData("[4,5,6,9]", "4–6, 9")]
    [InlineData("[1,3,4]", "1, 3–4")]
    [InlineData("all of them", "all of them")]
    public void Ranges_OfReadingNumbers_JoinNeighbours(string json, string expected) => Assert.Equal(expected, NumberRanges.Of(json));

    // Decimals: what the laboratory reports (common practice, no source); ties go to the even digit (IEEE 754-2019, 4.3.1).
    [Theory]
    [InlineData("glucose", "0.0575", "0.058")]
    [InlineData("glucose", "0.0585", "0.058")]
    [InlineData("sucrose", "-1.489181566092", "-1.49")]
    [InlineData("specific_gravity", "1.08", "1.0800")]
    [InlineData("mean_hunter_l", "64.05", "64.0")]
    [InlineData("made_by_a_newer_program", "0.12345678", "0.123457")]
    public void Result_WhenShown_IsRoundedOnceToItsQuantitysDecimals(string quantity, string value, string expected) =>
        Assert.Equal(expected, ShownValue.OfResult(quantity, decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture)));

    [Theory]
    [InlineData(null, 0, 1, 1)]
    [InlineData("2", 51, 2, 2)]
    [InlineData("1", 50, 1, 1)]
    public void Part_OfAList_IsTheOneAskedFor(string? asked, int total, int number, int last)
    {
        var part = ListPart.Of(asked, 50, total)!;

        Assert.Equal((number, last), (part.Number, part.Last));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("2")]
    [InlineData("-1")]
    [InlineData("1.5")]
    [InlineData("99999999999")]
    public void Part_ThatTheListDoesNotHave_IsNone(string asked) => Assert.Null(ListPart.Of(asked, 50, 50));
}
