using System.Xml.Linq;
using LabPipeline.Reporting.Planning;
using LabPipeline.Reporting.Printing;
using LabPipeline.Reporting.Tests.Exports;

namespace LabPipeline.Reporting.Tests.Planning;

public sealed class PlotMapTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void ToCsv_OfAMap_ReadsBackWithPlaceTreatmentAndSeed()
    {
        var rows = ExportLab.Parse(PlotMap.Of(OutlineExample.Plan(), columns: 3).ToCsv());

        Assert.Equal(24, rows.Count);
        Assert.Equal(("1", "1", "101"), (rows[0]["row"], rows[0]["column"], rows[0]["plot"]));
        Assert.Equal(("2", "1", "104"), (rows[3]["row"], rows[3]["column"], rows[3]["plot"]));
        Assert.Equal(("3", "1", "201"), (rows[6]["row"], rows[6]["column"], rows[6]["plot"]));
        Assert.All(rows, row => Assert.Equal("20260115", row["seed"]));
        Assert.All(OutlineExample.Plan().Plots.Zip(rows), pair => Assert.Equal(pair.First.Levels["nitrogen"], pair.Second["nitrogen"]));
    }

    [Fact]
    public void Of_AFieldWalkedToAndFro_NumbersEverySecondRowBackwards()
    {
        var cells = PlotMap.Of(OutlineExample.Plan(), columns: 3, serpentine: true).Cells;

        Assert.Equal([(2, 3), (2, 2), (2, 1)], cells.Skip(3).Take(3).Select(cell => (cell.Row, cell.Column)));
    }

    [Fact]
    public void Svg_OfAMap_HoldsEveryPlotAndAWordForThoseWhoDoNotSee()
    {
        var root = XDocument.Parse(PlotMapFiles.Svg(PlotMap.Of(OutlineExample.Plan(change: OutlineExample.AsSplitPlot)))).Root!;
        var texts = root.Elements(Svg + "text").Select(text => text.Value).ToList();

        Assert.Equal("VK-RATE-26: plot map", root.Element(Svg + "title")!.Value);
        Assert.All(OutlineExample.Plan().Plots, plot => Assert.Contains(plot.Code, texts));
        Assert.Equal(8, texts.Where(text => text.StartsWith('W')).Distinct().Count());
    }

    /// <summary>WCAG 2.2, success criterion 1.4.6: black text on any fill at 7 : 1 or more.</summary>
    [Fact]
    public void Svg_OfAMap_KeepsTextReadableOnEveryGrey()
    {
        var fills = XDocument.Parse(PlotMapFiles.Svg(PlotMap.Of(OutlineExample.Plan()))).Root!.Elements(Svg + "rect")
            .Select(rect => rect.Attribute("fill")!.Value).Where(fill => fill != "none").Distinct().ToList();

        Assert.True(fills.Count > 1);
        Assert.All(fills, fill => Assert.True((Luminance(fill) + 0.05) / 0.05 >= 7, fill));
    }

    [Fact]
    public void Svg_OfALevelTooLongForItsCell_SaysWhichOne()
    {
        const string longLevel = "a level whose name is too long to be printed into a small cell";
        var plan = OutlineExample.Plan(change: root => root["design"]!["factors"]![0]!["levels"]![1] = longLevel);

        Assert.Contains(longLevel, Assert.Throws<PrintException>(() => PlotMapFiles.Svg(PlotMap.Of(plan, columns: 24))).Message, StringComparison.Ordinal);
    }

    private static double Luminance(string grey)
    {
        var level = Convert.ToInt32(grey.Substring(1, 2), 16) / 255.0;
        return level <= 0.04045 ? level / 12.92 : Math.Pow((level + 0.055) / 1.055, 2.4);
    }
}
