using System.Text.Json.Nodes;
using LabPipeline.Reporting.Planning;

namespace LabPipeline.Reporting.Tests.Planning;

public sealed class PlanOutlineTests
{
    [Fact]
    public void Read_OfOverlappingWindows_RefusesThemInOneLine()
    {
        var faults = OutlineExample.Faults(root => root["pulls"]![1]!["opens"] = 22);

        Assert.Equal(
            "outline.json, pulls[1].opens: found 2026-10-08; expected a day after 2026-10-09, when pull 1 closes. Windows must not overlap: a reading belongs to one pull.",
            Assert.Single(faults).Describe(OutlineExample.Name));
    }

    [Fact]
    public void Read_OfADueDayOutsideItsWindow_RefusesIt() =>
        Assert.Equal("pulls[1].due", Assert.Single(OutlineExample.Faults(root => root["pulls"]![1]!["due"] = 60)).Path);

    [Theory]
    [InlineData("plots")]
    [InlineData("plotsFile")]
    public void Read_OfPlots_SaysThatTheyAreDrawn(string member) =>
        Assert.Equal(member, Assert.Single(OutlineExample.Faults(root => root[member] = "plots.csv")).Path);

    [Fact]
    public void Read_OfAStatedSeed_SaysThatItIsDrawn() =>
        Assert.Equal("design.seed", Assert.Single(OutlineExample.Faults(root => root["design"]!["seed"] = 3)).Path);

    [Fact]
    public void Read_OfAnUnknownDesign_TellsThatAloneAndNothingOfPlots() =>
        Assert.Equal("design.kind", Assert.Single(OutlineExample.Faults(root => root["design"]!["kind"] = "latin square")).Path);

    [Fact]
    public void Read_OfAMissingDesign_TellsIt() =>
        Assert.Contains(OutlineExample.Faults(root => root.Remove("design")), fault => fault.Path.StartsWith("design", StringComparison.Ordinal));

    [Theory]
    [InlineData("{ \"schema\": 1, }")]
    [InlineData("[]")]
    [InlineData("{ \"schema\": 1, \"schema\": 1 }")]
    public void Read_OfTextThatIsNoObject_TellsAFault(string text) => Assert.NotEmpty(PlanOutline.Read(text, OutlineExample.Name).Faults);

    [Fact]
    public void Read_OfALevelWithACommaAndNoUnit_IsFine() =>
        Assert.Equal("KT-104, early", OutlineExample.Plan(change: root =>
        {
            root["design"]!["factors"]![0]!["levels"] = new JsonArray("KT-104, early", "KT-118");
            root["results"]!["standardClone"] = "KT-104, early";
        }).Design.Factors[0].Levels[0]);
}
