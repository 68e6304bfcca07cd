using LabPipeline.Notifier.Messages;

namespace LabPipeline.Notifier.Tests.Messages;

public sealed class NoticeTextTests
{
    [Theory]
    [Shows(67)]
    [InlineData("plain, ΔE*ab 0.3 ≤ 0.5", "plain, ΔE*ab 0.3 ≤ 0.5")]
    [InlineData("a\r\nBcc: x@y.example", "a\\r\\nBcc: x@y.example")]
    [InlineData("\u001b[2J", "\\u001B[2J")]
    [InlineData("a\u202Eb", "a\\u202Eb")]
    [InlineData("a\u2028b\u0085c", "a\\u2028b\\u0085c")]
    [InlineData("🥔", "🥔")]
    public void OneLine_WhenTextIsHostile_ShowsItHarmless(string text, string expected) => Assert.Equal(expected, NoticeText.OneLine(text, 100));

    [Fact]
    public void OneLine_WhenAMegabyteComes_CutsWithoutSplittingACharacter()
    {
        var text = NoticeText.OneLine("x" + string.Concat(Enumerable.Repeat("🥔", 500_000)), 100);

        Assert.Equal(100, text.Length);
        Assert.EndsWith("🥔…", text, StringComparison.Ordinal);
    }

    // An attribute cannot hold half a character; a file read with the wrong encoding can.
    [Fact]
    public void OneLine_WhenHalfACharacterComes_WritesItsNumber() => Assert.Equal("\\uD800x", NoticeText.OneLine("\ud800x", 100));

    [Fact]
    public void OneLine_WhenItJustFits_IsWhole() => Assert.Equal("12345", NoticeText.OneLine("12345", 5));

    [Fact]
    public void FactsOf_WhenAnObject_KeepsNumbersAsWritten() =>
        Assert.Equal([new Fact("limit", "0.0120"), new Fact("unit", "mg/g")], NoticeText.FactsOf("""{"limit": 0.0120, "unit": "mg/g"}"""));

    [Theory]
    [InlineData("{\"a\": ")]
    [InlineData("[1]")]
    [InlineData("")]
    public void FactsOf_WhenNoObject_ShowsTheTextItself(string json) => Assert.Equal([new Fact("facts", json)], NoticeText.FactsOf(json));

    [Fact]
    public void FactsOf_WhenTooLong_PointsToTheBoard() =>
        Assert.Equal([new Fact("facts", "too many to show here; see the board")], NoticeText.FactsOf(new string('x', 8001)));
}
