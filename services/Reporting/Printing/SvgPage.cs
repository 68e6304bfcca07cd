using System.Globalization;
using System.Xml.Linq;

namespace LabPipeline.Reporting.Printing;

/// <summary>Writes a page as SVG 1.1: plain boxes and texts, any viewer's sans serif.</summary>
internal static class SvgPage
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <param name="page">The page.</param>
    /// <param name="title">What it shows, read out by screen readers.</param>
    /// <param name="description">The same in a sentence.</param>
    public static string Of(Page page, string title, string description)
    {
        var root = new XElement(
            Svg + "svg",
            SizeOf(page),
            new XElement(Svg + "title", title),
            new XElement(Svg + "desc", description),
            new XElement(Svg + "rect", new XAttribute("width", "100%"), new XAttribute("height", "100%"), new XAttribute("fill", "#ffffff")),
            page.Marks.Select(Of));
        return new XDeclaration("1.0", "utf-8", null) + "\n" + root + "\n";
    }

    /// <summary>The page as a part of an HTML page: black boxes gathered into one path, because a sheet of symbols has tens of thousands.</summary>
    public static string Inside(Page page, string title) => new XElement(
        Svg + "svg",
        SizeOf(page),
        new XElement(Svg + "title", title),
        new XElement(Svg + "path", new XAttribute("d", string.Concat(page.Marks.OfType<Mark.Fill>().Where(IsBlack).Select(Outline)))),
        page.Marks.Where(mark => mark is not Mark.Fill fill || !IsBlack(fill)).Select(Of)).ToString(SaveOptions.DisableFormatting);

    private static bool IsBlack(Mark.Fill box) => box.Ink == 1;

    private static string Outline(Mark.Fill box) => $"M{Number(box.Left)} {Number(box.Top)}h{Number(box.Width)}v{Number(box.Height)}h{Number(-box.Width)}z";

    private static XAttribute[] SizeOf(Page page) =>
    [
        new("width", Number(page.Width) + "mm"),
        new("height", Number(page.Height) + "mm"),
        new("viewBox", $"0 0 {Number(page.Width)} {Number(page.Height)}"),
        new("role", "img"),
    ];

    private static XElement Of(Mark mark) => mark switch
    {
        Mark.Fill box => new XElement(Svg + "rect", BoxOf(box.Left, box.Top, box.Width, box.Height), new XAttribute("fill", Grey(box.Ink))),
        Mark.Frame box => new XElement(
            Svg + "rect",
            BoxOf(box.Left, box.Top, box.Width, box.Height),
            new XAttribute("fill", "none"),
            new XAttribute("stroke", "#000000"),
            new XAttribute("stroke-width", Number(box.Stroke))),
        Mark.Words words => new XElement(
            Svg + "text",
            new XAttribute("x", Number(words.Left)),
            new XAttribute("y", Number(words.Baseline)),
            new XAttribute("font-family", "DejaVu Sans, Arial, sans-serif"),
            new XAttribute("font-size", Number(words.Size)),
            words.Bold ? new XAttribute("font-weight", "bold") : null,
            words.Text),
        _ => throw new ArgumentException($"Found a {mark.GetType().Name}; expected a fill, a frame or words.", nameof(mark)),
    };

    private static XAttribute[] BoxOf(double left, double top, double width, double height) =>
    [
        new("x", Number(left)),
        new("y", Number(top)),
        new("width", Number(width)),
        new("height", Number(height)),
    ];

    private static string Grey(double ink)
    {
        var level = ((int)Math.Round((1 - ink) * 255)).ToString("x2", CultureInfo.InvariantCulture);
        return $"#{level}{level}{level}";
    }

    private static string Number(double value) => Math.Round(value, 3).ToString(CultureInfo.InvariantCulture);
}
