using LabPipeline.Reporting.Labels;
using LabPipeline.Reporting.Printing;
using LabPipeline.Reporting.Tests.Planning;
using LabPipeline.Science.Barcodes;

namespace LabPipeline.Reporting.Tests.Labels;

public sealed class LabelPrintTests
{
    private static readonly LabelText Label = LabelSet.Samples(OutlineExample.Plan(), 2, null)[0];

    [Fact]
    public void Pages_OfATextLongerThanItsBox_NamesLabelAndField()
    {
        var (pages, faults) = LabelPrint.Pages(LabelSheet.Small, [Label, Label with { Barcode = "26VR02003T", Treatment = "KT-104 / nitrogen 240 kg/ha, half of it after flowering" }], 1);

        var fault = Assert.Single(faults);
        Assert.Equal("label 26VR02003T (plot 101), field treatment", fault.Where);
        Assert.Contains("'KT-104 / nitrogen 240 kg/ha, half of it after flowering'", fault.Found, StringComparison.Ordinal);
        Assert.EndsWith("nothing is cut.", fault.ToString(), StringComparison.Ordinal);
        Assert.NotEmpty(pages);
        Assert.Null(LabelPrint.Pdf(LabelSheet.Small, [Label with { Treatment = new string('W', 40) }], 1, default).Pdf);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(66)]
    public void Pages_OfAFirstPlaceThatIsNotOnTheSheet_AreRefused(int first) =>
        Assert.Contains("1 to 65", Assert.Single(LabelPrint.Pages(LabelSheet.Small, [Label], first).Faults).ToString(), StringComparison.Ordinal);

    [Fact]
    public void Pages_OfNoLabels_AreRefused() => Assert.Single(LabelPrint.Pages(LabelSheet.Tags, [], 1).Faults);

    [Fact]
    public void Pages_OfASymbolThatDoesNotFit_SayHowLargeItIs()
    {
        var fault = Assert.Single(LabelPrint.Pages(LabelSheet.Tags with { LabelWidth = 60 }, [Label], 1).Faults);

        Assert.EndsWith("(plot 101), symbol", fault.Where, StringComparison.Ordinal);
        Assert.Contains("quiet zones of 10 modules", fault.Found, StringComparison.Ordinal);
    }

    /// <summary>Quiet zones: ISO/IEC 15417, 10 X on both sides; ISO/IEC 16022, 1 X on all sides (both from memory).</summary>
    [Theory]
    [InlineData(LabelSymbol.Code128, null)]
    [InlineData(LabelSymbol.Code128, TuberHalf.Sugar)]
    [InlineData(LabelSymbol.DataMatrix, null)]
    [InlineData(LabelSymbol.DataMatrix, TuberHalf.Fry)]
    public void Pages_OfAnyLabel_KeepTheQuietZoneFree(LabelSymbol symbol, TuberHalf? half)
    {
        var sheet = (symbol == LabelSymbol.Code128 ? LabelSheet.Tags : LabelSheet.Small) with { MarginLeft = 0, MarginTop = 0 };
        var (pages, _) = LabelPrint.Pages(sheet, [Label with { Half = half }], 1);
        var (dark, words) = (pages[0].Marks.OfType<Mark.Fill>().ToList(), pages[0].Marks.OfType<Mark.Words>().ToList());
        var (across, down) = symbol == LabelSymbol.Code128 ? (10 * sheet.Module, 0) : (sheet.Module, sheet.Module);
        var (left, right) = (dark.Min(box => box.Left) - across, dark.Max(box => box.Left + box.Width) + across);
        var (top, bottom) = (dark.Min(box => box.Top) - down, dark.Max(box => box.Top + box.Height) + down);
        var widths = new TextWidths();

        Assert.InRange(left, 0, sheet.LabelWidth);
        Assert.InRange(right, 0, sheet.LabelWidth);
        Assert.InRange(top, 0, sheet.LabelHeight);
        // Letters rise at most their whole size above the baseline, and none here reaches below by more than a quarter.
        Assert.All(words, text => Assert.True(
            text.Left >= right || text.Left + widths.Of(text.Text, text.Size, text.Bold) <= left || text.Baseline - (0.8 * text.Size) >= bottom || text.Baseline + (0.25 * text.Size) <= top,
            text.Text));
    }

    [Fact]
    public void Pages_OfHalves_CarryABigLetter()
    {
        var labels = LabelSet.Halves(OutlineExample.Plan(), 1, null, eachTuber: false);
        var words = LabelPrint.Pages(LabelSheet.Small, labels, 1).Pages.SelectMany(page => page.Marks.OfType<Mark.Words>()).ToList();

        Assert.Equal(48, labels.Count);
        Assert.Equal((24, 24), (words.Count(text => text.Text == "S"), words.Count(text => text.Text == "F")));
        Assert.All(labels, label => Assert.Single(words, text => text.Text == $"{label.Barcode}-{(label.Half == TuberHalf.Sugar ? 'S' : 'F')}"));
        Assert.All(words.Where(text => text.Text is "S" or "F"), text => Assert.True(text.Bold && text.Size > 8));
    }

    [Fact]
    public void Pages_OfABlindedLabel_SayNothingOfTheTreatment()
    {
        var plan = OutlineExample.Plan();
        var codes = BlindCodes.Of(plan, 5);
        var words = LabelPrint.Pages(LabelSheet.Tags, LabelSet.Samples(plan, 1, codes), 1).Pages.SelectMany(page => page.Marks.OfType<Mark.Words>()).Select(text => text.Text).ToList();

        Assert.DoesNotContain(words, text => text.Contains("KT-", StringComparison.Ordinal) || text.Contains("kg/ha", StringComparison.Ordinal));
        Assert.All(plan.Plots, plot => Assert.Contains("code " + codes.Of(plot), words));
    }
}
