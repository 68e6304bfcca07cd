namespace LabPipeline.Hosting.Tests.Logging;

public sealed class VisibleTextTests
{
    [Theory]
    [InlineData("0,052", "0,052")]
    [InlineData("a\r\nINFO all is well", "a\\r\\nINFO all is well")]
    [InlineData("\u001b[2J\t", "\\u001B[2J\\t")]
    [InlineData("\u202Egnp.exe\u2028x\uFEFF", "\\u202Egnp.exe\\u2028x\\uFEFF")]
    [InlineData("µ °C é 🥔", "µ °C é 🥔")]
    public void Of_WhenTextHoldsControls_SpellsThemOut(string text, string expected) => Assert.Equal(expected, VisibleText.Of(text));

    [Fact]
    public void Of_WhenTextIsLong_ShortensIt() => Assert.Equal(new string('x', 60) + "...", VisibleText.Of(new string('x', 61)));

    [Fact]
    public void Of_WhenCutWouldSplitACharacter_CutsBeforeIt() => Assert.Equal(new string('x', 59) + "...", VisibleText.Of(new string('x', 59) + "🥔🥔"));
}
