using System.Text.Json.Nodes;
using LabPipeline.Reporting.Labels;

namespace LabPipeline.Reporting.Tests.Labels;

public sealed class LabelSheetFileTests
{
    private const string Json =
        """
        { "name": "bench roll", "symbol": "dataMatrix", "module": 0.5, "pageWidth": 104, "pageHeight": 25, "marginLeft": 2, "marginTop": 1,
          "columns": 2, "rows": 1, "labelWidth": 48, "labelHeight": 23, "gapAcross": 4, "gapDown": 0, "padding": 1.5 }
        """;

    [Fact]
    public void Read_OfASoundSheet_GivesItsGeometry()
    {
        var (sheet, faults) = LabelSheetFile.Read(Json, "roll.json");

        Assert.Empty(faults);
        Assert.Equal((LabelSymbol.DataMatrix, 48, 2), (sheet!.Symbol, sheet.LabelWidth, sheet.LabelsPerPage));
    }

    [Theory]
    [InlineData("labelWidth", "60", "sheet bench roll, pageWidth: found 104 mm; expected at least 126 mm for 2 labels of 60 mm across")]
    [InlineData("rows", "2", "sheet bench roll, pageHeight: found 25 mm; expected at least 47 mm for 2 labels")]
    [InlineData("module", "0.1", "sheet bench roll, module: found 0.1; expected 0.375 to 2")]
    [InlineData("columns", "0", "sheet bench roll, columns: found 0; expected 1 to 50")]
    [InlineData("marginLeft", "-1", "sheet bench roll, marginLeft: found -1; expected 0 to 200")]
    [InlineData("symbol", "\"qr\"", "text that is no sheet")]
    [InlineData("labelWidth", "\"48\"", "text that is no sheet")]
    [InlineData("lableWidth", "48", "text that is no sheet")]
    public void Read_OfABadMember_SaysWhich(string member, string value, string expected)
    {
        var root = JsonNode.Parse(Json)!.AsObject();
        root[member] = JsonNode.Parse(value);

        Assert.Contains(LabelSheetFile.Read(root.ToJsonString(), "roll.json").Faults, fault => fault.ToString().Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_OfAMissingMember_NamesIt()
    {
        var root = JsonNode.Parse(Json)!.AsObject();
        root.Remove("gapDown");

        Assert.Contains("gapDown", Assert.Single(LabelSheetFile.Read(root.ToJsonString(), "roll.json").Faults).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void BuiltInSheets_WhenChecked_AreSound()
    {
        Assert.Empty(LabelSheetChecks.Of(LabelSheet.Tags));
        Assert.Empty(LabelSheetChecks.Of(LabelSheet.Small));
    }
}
