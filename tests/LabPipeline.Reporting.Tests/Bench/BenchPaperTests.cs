using LabPipeline.Reporting.Bench;
using LabPipeline.Reporting.Printing;
using LabPipeline.Reporting.Tests.Exports;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Reporting.Tests.Bench;

public sealed class BenchPaperTests
{
    private static readonly DateTimeOffset Now = new(2026, 10, 5, 12, 30, 0, TimeSpan.Zero);

    [Fact]
    public void PickList_OfAPull_IsByBayAndPlot()
    {
        var rows = ExportLab.Parse(PickList.ToCsv(BenchPulls.Of(blocks: 2, plots: 4)));

        Assert.Equal(
            ["B1 102", "B1 104", "B1 202", "B1 204", "B2 101", "B2 103", "B2 201", "B2 203"],
            rows.Select(row => $"{row["bay"]} {row["plot"]}"));
    }

    [Fact]
    public void PickList_WhenPrinted_HoldsEveryBagATickBoxAndTheWarnings()
    {
        var pull = BenchPulls.Of(blocks: 2, plots: 40);
        var pages = PickList.Pages(pull, ["The pull is late."]);
        var words = WordsOf(pages);

        Assert.All(pull.Samples, sample => Assert.Single(words, text => text == sample.Barcode));
        Assert.Contains("! The pull is late.", words);
        Assert.Equal(4, pages.Count);
        Assert.Contains("page 4 of 4", words);
        Assert.Equal(4, words.Count(text => text.StartsWith("Storage bays: oxygen may be low", StringComparison.Ordinal)));
        RequireOnPage(pages);
    }

    [Theory]
    [InlineData(BenchOrderKinds.Frying, "NEVER WATER", "control potatoes")]
    [InlineData(BenchOrderKinds.Analysis, "cut-resistant gloves", "closing standard")]
    public void BenchSheet_WhenPrinted_HoldsPlacesControlsAndCautions(string kind, string caution, string control)
    {
        var order = BenchDraw.Of(BenchPulls.Of(blocks: 2, plots: 25), kind, 7, Now, "Ada") with { DrawNo = 1, Why = "first draw" };
        var pages = BenchSheet.Pages(order, controlEvery: 10);
        var words = WordsOf(pages);

        Assert.All(order.Places, place => Assert.Single(words, text => text == place.Barcode));
        Assert.Contains(words, text => text.Contains(caution, StringComparison.Ordinal));
        Assert.Contains(words, text => text.Contains(control, StringComparison.Ordinal));
        Assert.Contains(words, text => text.Contains("local codes, the safety officer and trained staff decide", StringComparison.Ordinal));
        // Before the first, after 10, 20 and 25 samples, in both blocks.
        Assert.Equal(8, words.Count(text => text.Contains(kind == BenchOrderKinds.Frying ? "control potatoes" : "control check", StringComparison.Ordinal)));
        Assert.Contains(words, text => text.Contains("seed 7, by Ada, 2026-10-05 12:30 UTC", StringComparison.Ordinal));
        RequireOnPage(pages);
    }

    [Fact]
    public void BenchSheet_AsATable_ReadsBackInOrder()
    {
        var order = BenchDraw.Of(BenchPulls.Of(2, 5), BenchOrderKinds.Analysis, 7, Now, "Ada") with { DrawNo = 2 };
        var rows = ExportLab.Parse(BenchSheet.ToCsv(order));

        Assert.Equal(order.Places.Select(place => place.Barcode), rows.Select(row => (string)row["barcode"]));
        Assert.All(rows, row => Assert.Equal(("2", "7"), (row["draw"], row["seed"])));
    }

    [Fact]
    public void PickList_OfAPlotCodeTooLongForItsCell_IsRefusedByName()
    {
        var pull = BenchPulls.Of(1, 1);
        var longPlot = pull with { Samples = [pull.Samples[0] with { PlotCode = "NORTH-FIELD-BEHIND-THE-BARN-0001" }] };

        Assert.Contains("column plot: found 'NORTH-FIELD-BEHIND-THE-BARN-0001'", Assert.Throws<PrintException>(() => PickList.Pages(longPlot, [])).Message, StringComparison.Ordinal);
    }

    private static List<string> WordsOf(IReadOnlyList<Page> pages) => [.. pages.SelectMany(page => page.Marks.OfType<Mark.Words>()).Select(text => text.Text)];

    private static void RequireOnPage(IReadOnlyList<Page> pages)
    {
        var widths = new TextWidths();
        Assert.All(pages, page => Assert.All(page.Marks.OfType<Mark.Words>(), text => Assert.True(
            text.Left >= 5 && text.Left + widths.Of(text.Text, text.Size, text.Bold) <= page.Width - 5 && text.Baseline <= page.Height - 5, text.Text)));
    }
}
