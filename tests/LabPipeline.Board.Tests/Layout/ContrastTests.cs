using System.Globalization;
using System.Text.RegularExpressions;

namespace LabPipeline.Board.Tests.Layout;

/// <summary>Contrast of the style sheet's colours. Formula and limits: WCAG 2.2, "relative luminance", "contrast ratio", 1.4.3 (4.5 : 1) and 1.4.11 (3 : 1).</summary>
public sealed class ContrastTests
{
    private static readonly Dictionary<string, double> Luminances = Regex
        .Matches(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "wwwroot", "board.css")), "--([a-z]+): #([0-9a-f]{6});")
        .ToDictionary(match => match.Groups[1].Value, match => Luminance(match.Groups[2].Value));

    // WCAG 2.2: black on white is 21 : 1.
    [Fact]
    public void Contrast_OfBlackOnWhite_IsTwentyOne() => Assert.Equal(21.0, Contrast(Luminance("000000"), Luminance("ffffff")), 9);

    [Theory]
    [InlineData("ink")]
    [InlineData("soft")]
    [InlineData("link")]
    [InlineData("block")]
    [InlineData("hold")]
    [InlineData("note")]
    [InlineData("good")]
    public void Words_OnPaperAndShade_CanBeRead(string colour)
    {
        Assert.True(Contrast(Luminances[colour], Luminances["paper"]) >= 4.5);
        Assert.True(Contrast(Luminances[colour], Luminances["shade"]) >= 4.5);
    }

    [Fact]
    public void Frames_OfFieldsAndBars_CanBeSeen() => Assert.True(Contrast(Luminances["frame"], Luminances["paper"]) >= 3);

    private static double Contrast(double one, double other) => (Math.Max(one, other) + 0.05) / (Math.Min(one, other) + 0.05);

    private static double Luminance(string hex) => (0.2126 * Linear(hex[..2])) + (0.7152 * Linear(hex[2..4])) + (0.0722 * Linear(hex[4..]));

    private static double Linear(string hex)
    {
        var share = int.Parse(hex, NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
