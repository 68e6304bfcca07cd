using LabPipeline.Reporting.Labels;
using LabPipeline.Reporting.Tests.Planning;
using LabPipeline.Science.Barcodes;
using ZXing;
using ZXing.Common;

namespace LabPipeline.Reporting.Tests.Labels;

/// <summary>Every label of a pull is cut out of the printed page and read by a decoder that knows nothing of how it was drawn.</summary>
public sealed class LabelReadingTests
{
    private static readonly DateTimeOffset Now = new(2026, 9, 20, 14, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(203)]
    [InlineData(300)]
    public async Task Tags_WhenPrinted_AreEachReadBackAsCode128(int dpi) =>
        await RequireReadableAsync(LabelSheet.Tags, LabelSet.Samples(OutlineExample.Plan(), 2, null), 3, dpi);

    [Theory]
    [InlineData(203)]
    [InlineData(300)]
    public async Task HalfTags_WhenPrinted_AreEachReadBackAsCode128(int dpi) =>
        await RequireReadableAsync(LabelSheet.Tags, LabelSet.Halves(OutlineExample.Plan(), 2, null, eachTuber: false), 1, dpi);

    [Theory]
    [InlineData(203)]
    [InlineData(300)]
    public async Task SmallLabels_WhenPrinted_AreEachReadBackAsDataMatrix(int dpi) =>
        await RequireReadableAsync(LabelSheet.Small, LabelSet.Halves(OutlineExample.Plan(), 2, BlindCodes.Of(OutlineExample.Plan(), 5), eachTuber: true), 60, dpi);

    [Theory]
    [InlineData(LabelSymbol.Code128, 300)]
    [InlineData(LabelSymbol.DataMatrix, 203)]
    [InlineData(LabelSymbol.DataMatrix, 300)]
    public async Task Labels_WithTheSmallestModule_AreEachReadBack(LabelSymbol symbol, int dpi) => await RequireReadableAsync(
        (symbol == LabelSymbol.Code128 ? LabelSheet.Tags : LabelSheet.Small) with { Module = LabelSheetChecks.SmallestModuleOf(symbol) },
        LabelSet.Samples(OutlineExample.Plan(), 1, null), 1, dpi);

    private static async Task RequireReadableAsync(LabelSheet sheet, IReadOnlyList<LabelText> labels, int first, int dpi)
    {
        PdfRaster.SkipWithoutTool();
        var (pdf, faults) = LabelPrint.Pdf(sheet, labels, first, Now);
        Assert.Empty(faults);
        var pages = new Dictionary<int, PdfRaster>();
        foreach (var (label, index) in labels.Select((label, index) => (label, index + first - 1)))
        {
            var page = 1 + (index / sheet.LabelsPerPage);
            if (!pages.TryGetValue(page, out var raster))
            {
                pages[page] = raster = await PdfRaster.OfAsync(pdf!, page, dpi);
            }

            var (left, top, width, height) = SymbolOf(sheet, label, index % sheet.LabelsPerPage);
            var read = Decode(raster.Cut(left, top, width, height), sheet.Symbol);
            Assert.Equal(label.Barcode + EndingOf(label.Half), read);
            Assert.Equal((label.Barcode, label.Half), (HalfCode.Read(read!).Reading.Barcode?.Text, HalfCode.Read(read!).Half));
        }
    }

    /// <summary>
    /// The whole label for bars. For a square its corner alone, quiet zone and padding included: this decoder looks for one square in the middle of
    /// the picture, as a scanner's aimer would put it there.
    /// </summary>
    private static (double Left, double Top, double Width, double Height) SymbolOf(LabelSheet sheet, LabelText label, int place)
    {
        var (left, top) = LabelPrint.CornerOf(sheet, place);
        var side = (2 * sheet.Padding) + (SymbolModules.Of(label.Code, LabelSymbol.DataMatrix).Width * sheet.Module);
        return sheet.Symbol == LabelSymbol.Code128 ? (left, top, sheet.LabelWidth, sheet.LabelHeight) : (left, top, side, side);
    }

    private static string EndingOf(TuberHalf? half) => half switch
    {
        TuberHalf.Sugar => "-S",
        TuberHalf.Fry => "-F",
        _ => "",
    };

    private static string? Decode(PdfRaster label, LabelSymbol symbol)
    {
        var hints = new Dictionary<DecodeHintType, object>
        {
            [DecodeHintType.POSSIBLE_FORMATS] = new List<BarcodeFormat> { symbol == LabelSymbol.Code128 ? BarcodeFormat.CODE_128 : BarcodeFormat.DATA_MATRIX },
            [DecodeHintType.TRY_HARDER] = true,
        };
        var source = new RGBLuminanceSource(label.Grey, label.Width, label.Height, RGBLuminanceSource.BitmapFormat.Gray8);
        return new MultiFormatReader().decode(new BinaryBitmap(new HybridBinarizer(source)), hints)?.Text;
    }
}
