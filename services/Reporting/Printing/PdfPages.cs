using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace LabPipeline.Reporting.Printing;

/// <summary>Writes pages as PDF.</summary>
internal static class PdfPages
{
    private const double PointsPerMillimetre = 72 / 25.4;

    /// <exception cref="PrintException">There is no font.</exception>
    public static byte[] Of(IReadOnlyList<Page> pages, string title, DateTimeOffset now)
    {
        PrintFonts.Ensure();
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Info.Creator = "LabPipeline";
        document.Info.CreationDate = now.UtcDateTime;
        foreach (var page in pages)
        {
            var sheet = document.AddPage();
            sheet.Width = XUnit.FromMillimeter(page.Width);
            sheet.Height = XUnit.FromMillimeter(page.Height);
            using var graphics = XGraphics.FromPdfPage(sheet);
            foreach (var mark in page.Marks)
            {
                Draw(graphics, mark);
            }
        }

        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    private static void Draw(XGraphics graphics, Mark mark)
    {
        switch (mark)
        {
            case Mark.Fill box:
                graphics.DrawRectangle(new XSolidBrush(XColor.FromGrayScale(1 - box.Ink)), Box(box.Left, box.Top, box.Width, box.Height));
                break;
            case Mark.Frame box:
                graphics.DrawRectangle(new XPen(XColors.Black, box.Stroke * PointsPerMillimetre), Box(box.Left, box.Top, box.Width, box.Height));
                break;
            case Mark.Words words:
                var font = new XFont(PrintFonts.Family, words.Size * PointsPerMillimetre, words.Bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
                graphics.DrawString(words.Text, font, XBrushes.Black, words.Left * PointsPerMillimetre, words.Baseline * PointsPerMillimetre);
                break;
        }
    }

    private static XRect Box(double left, double top, double width, double height) => new(
        left * PointsPerMillimetre, top * PointsPerMillimetre, width * PointsPerMillimetre, height * PointsPerMillimetre);
}
