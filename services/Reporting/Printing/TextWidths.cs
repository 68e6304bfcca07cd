using PdfSharp.Drawing;

namespace LabPipeline.Reporting.Printing;

/// <summary>How wide a text is when printed.</summary>
internal sealed class TextWidths
{
    private const double ReferenceSize = 100;

    private readonly XGraphics _graphics;
    private readonly XFont _regular;
    private readonly XFont _bold;

    /// <exception cref="PrintException">There is no font.</exception>
    public TextWidths()
    {
        PrintFonts.Ensure();
        _graphics = XGraphics.CreateMeasureContext(new XSize(ReferenceSize, ReferenceSize), XGraphicsUnit.Point, XPageDirection.Downwards);
        _regular = new XFont(PrintFonts.Family, ReferenceSize, XFontStyleEx.Regular);
        _bold = new XFont(PrintFonts.Family, ReferenceSize, XFontStyleEx.Bold);
    }

    /// <summary>In millimetres, for a font of <paramref name="size"/> millimetres.</summary>
    public double Of(string text, double size, bool bold) => _graphics.MeasureString(text, bold ? _bold : _regular).Width * size / ReferenceSize;
}
