using LabPipeline.Board.Alerts;

namespace LabPipeline.Board.Tests.Alerts;

public sealed class FactListTests
{
    [Fact]
    public void Of_AnObjectOfTexts_KeepsTheOrderTheRuleWrote() =>
        Assert.Equal([KeyValuePair.Create("limit", "0.012"), KeyValuePair.Create("found", "0.02")], FactList.Of("""{"limit":"0.012","found":"0.02"}"""));

    /// <summary>An alert is shown whatever its facts look like; they are only left out.</summary>
    [Theory]
    [InlineData("")]
    [InlineData("""{"limit":""")]
    [InlineData("limit 0.012")]
    [InlineData("[1]")]
    public void Of_WhatIsNoObject_IsEmpty(string json) => Assert.Empty(FactList.Of(json));
}
