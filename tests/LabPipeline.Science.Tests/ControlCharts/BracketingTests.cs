using LabPipeline.Science.ControlCharts;

namespace LabPipeline.Science.Tests.ControlCharts;

/// <summary>Bracketing of readings between controls: common practice of analytical laboratories, no source.</summary>
public sealed class BracketingTests
{
    [Theory]
    [InlineData("+ a b +", "a:Good b:Good")]
    [InlineData("+ a b - c +", "a:InDoubt b:InDoubt c:InDoubt")]
    [InlineData("+ a + b - c", "a:Good b:InDoubt c:InDoubt")]
    [InlineData("a + b", "a:Open b:Open")]
    [InlineData("a - b", "a:InDoubt b:InDoubt")]
    [InlineData("a", "a:Open")]
    [InlineData("+ + a + + b + -", "a:Good b:InDoubt")]
    [InlineData("- + a +", "a:InDoubt")]
    [InlineData("+ - +", "")]
    [InlineData("", "")]
    public void Judge_OnARun_DoubtsWhatAFailedControlTouches(string run, string expected)
    {
        var entries = run.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select((mark, index) => mark is "+" or "-" ? RunEntry.Control($"control {index}", mark == "+") : RunEntry.Reading(mark))
            .ToList();

        var judged = Bracketing.Judge(entries);

        Assert.Equal(expected, string.Join(' ', judged.Select(reading => $"{reading.Id}:{reading.State}")));
    }

    [Fact]
    public void Judge_WhenAReadingIsInDoubt_NamesTheControls()
    {
        var judged = Bracketing.Judge([RunEntry.Control("open", true), RunEntry.Reading("a"), RunEntry.Control("close", false)]);

        Assert.Equal("open", Assert.Single(judged[0].Before).Id);
        Assert.Equal("close", Assert.Single(judged[0].After).Id);
    }
}
