using System.Globalization;
using LabPipeline.Reporting.Printing;

namespace LabPipeline.Reporting.Labels;

/// <summary>Lays out one label. Places are measured from its upper left corner.</summary>
internal static class LabelFace
{
    // The layouts below are drawn for these heights within the padding and scaled to others.
    private const double TagHeight = 34;

    /// <summary>Bars at least so high, and at least this share of the symbol's width. Common practice for hand scanners, no source.</summary>
    private const double LowestBars = 5;

    private const double BarsToWidth = 0.15;

    /// <summary>Three lines of text stand beside a square, even one that is smaller.</summary>
    private const double LowestSquareZone = 7;

    public static FaceBuilder Of(LabelSheet sheet, LabelText label, TextWidths widths)
    {
        var face = new FaceBuilder(label, widths);
        var symbol = SymbolModules.Of(label.Code, sheet.Symbol);
        if (sheet.Symbol == LabelSymbol.Code128)
        {
            Tag(face, sheet, label, symbol);
        }
        else
        {
            Small(face, sheet, label, symbol);
        }

        return face;
    }

    private static void Tag(FaceBuilder face, LabelSheet sheet, LabelText label, SymbolModules symbol)
    {
        var (inner, scale) = (sheet.LabelWidth - (2 * sheet.Padding), (sheet.LabelHeight - (2 * sheet.Padding)) / TagHeight);
        var (bars, quiet) = (symbol.Width * sheet.Module, symbol.Quiet * sheet.Module);
        var letterWidth = label.HalfLetter.Length == 0 ? 0 : face.WidthOf(label.HalfLetter, 16 * scale, bold: true);
        var (needed, height) = (bars + (2 * quiet) + letterWidth, 14 * scale);
        var lowest = Math.Max(LowestBars, BarsToWidth * bars);
        if (needed > sheet.LabelWidth || height < lowest)
        {
            face.RefuseSymbol(
                $"bars of {FaceBuilder.Text(bars)} x {FaceBuilder.Text(height)} mm, {FaceBuilder.Text(needed)} mm wide with quiet zones of 10 modules",
                $"at most {FaceBuilder.Text(sheet.LabelWidth)} mm wide and bars at least {FaceBuilder.Text(lowest)} mm high");
            return;
        }

        var (left, right, top) = (sheet.Padding, sheet.LabelWidth - sheet.Padding, sheet.Padding);
        face.Draw(symbol, letterWidth == 0 ? (sheet.LabelWidth - bars) / 2 : Math.Max(left, quiet), top, sheet.Module, height);
        if (letterWidth > 0)
        {
            face.Put("half", label.HalfLetter, (right - letterWidth, top + height, letterWidth), 16 * scale, bold: true);
        }

        var line = top + (19 * scale);
        face.Put("trial", label.Trial, (left, line, inner * 0.26), 2.4 * scale);
        face.Put("barcode", label.Code, (left + (inner * 0.26), line, inner * 0.54), 4.2 * scale, bold: true, align: 0.5);
        face.Put("check character", $"check {label.Barcode[^1]}", (left + (inner * 0.8), line, inner * 0.2), 2.4 * scale, align: 1);
        line = top + (27 * scale);
        face.Put("plot", $"plot {label.Plot}", (left, line, inner * 0.45), 6 * scale, bold: true);
        face.Put("block", $"block {label.Block}", (left + (inner * 0.46), line, inner * 0.24), 3 * scale, align: 0.5);
        face.Put("pull", Text($"pull {label.Pull}"), (left + (inner * 0.7), line, inner * 0.3), 6 * scale, bold: true, align: 1);
        line = top + (32.5 * scale);
        face.Put("treatment", label.Treatment, (left, line, label.Tuber is null ? inner : inner * 0.78), 3.2 * scale);
        PutTuber(face, label, (left + (inner * 0.78), line, inner * 0.22), 3.6 * scale);
    }

    private static void Small(FaceBuilder face, LabelSheet sheet, LabelText label, SymbolModules symbol)
    {
        var (side, quiet) = (symbol.Width * sheet.Module, symbol.Quiet * sheet.Module);
        var (left, top) = (Math.Max(sheet.Padding, quiet), Math.Max(sheet.Padding, quiet));
        var zone = Math.Max(side, LowestSquareZone);
        var (inner, below) = (sheet.LabelWidth - left - sheet.Padding, top + zone + quiet);
        if (side > inner || below > sheet.LabelHeight - sheet.Padding)
        {
            face.RefuseSymbol(
                $"a square of {FaceBuilder.Text(side)} mm, {FaceBuilder.Text(side + (2 * quiet))} mm with its quiet zone",
                $"a square that fits {FaceBuilder.Text(sheet.LabelWidth)} x {FaceBuilder.Text(sheet.LabelHeight)} mm and leaves room for text");
            return;
        }

        face.Draw(symbol, left, top, sheet.Module, sheet.Module);
        var beside = left + side + Math.Max(1.5, 2 * quiet);
        if (label.HalfLetter.Length > 0)
        {
            var size = Math.Min(zone * 1.35, 12);
            var width = face.WidthOf(label.HalfLetter, size, bold: true);
            face.Put("half", label.HalfLetter, (beside, top + (zone / 2) + (size * 0.365), width), size, bold: true);
            beside += width + 1.5;
        }

        var column = sheet.LabelWidth - sheet.Padding - beside;
        var step = zone / 3;
        face.Put("plot", $"plot {label.Plot}", (beside, top + (step * 0.8), column), Math.Min(2.8, step), bold: true);
        face.Put("pull", Text($"pull {label.Pull}"), (beside, top + (step * 1.85), column), Math.Min(2.6, step * 0.95));
        face.Put("block", $"block {label.Block}", (beside, top + (step * 2.9), column), Math.Min(2.1, step * 0.9));
        var row = (sheet.LabelHeight - sheet.Padding - below) / 3;
        face.Put("barcode", label.Code, (left, below + (row * 0.9), inner * 0.72), Math.Min(2.7, row * 0.9), bold: true);
        face.Put("check character", $"check {label.Barcode[^1]}", (left + (inner * 0.72), below + (row * 0.9), inner * 0.28), Math.Min(2, row * 0.8), align: 1);
        face.Put("treatment", label.Treatment, (left, below + (row * 1.85), inner), Math.Min(2.4, row * 0.85));
        face.Put("trial", label.Trial, (left, below + (row * 2.75), label.Tuber is null ? inner : inner * 0.6), Math.Min(1.9, row * 0.75));
        PutTuber(face, label, (left + (inner * 0.6), below + (row * 2.75), inner * 0.4), Math.Min(2.6, row * 0.9));
    }

    private static void PutTuber(FaceBuilder face, LabelText label, (double Left, double Baseline, double Width) box, double size)
    {
        if (label.Tuber is { } tuber)
        {
            face.Put("tuber", Text($"tuber {tuber}"), box, size, bold: true, align: 1);
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
