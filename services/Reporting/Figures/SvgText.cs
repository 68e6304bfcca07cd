using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace LabPipeline.Reporting.Figures;

/// <summary>Makes a drawing fit to stand inside a page: named for those who cannot see it, scaled by its frame, the same text every time.</summary>
internal static partial class SvgText
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly XNamespace Link = "http://www.w3.org/1999/xlink";

    /// <param name="xml">A whole SVG document.</param>
    /// <param name="id">Unique in the page; identifiers inside are made from it.</param>
    /// <param name="title">Read out as its name.</param>
    /// <param name="description">Read out as what it shows.</param>
    public static string Accessible(string xml, string id, string title, string description)
    {
        var root = XDocument.Parse(xml).Root!;
        Rename(root, id);
        foreach (var element in root.Descendants())
        {
            Dash(element);
        }

        foreach (var attribute in root.Descendants().Attributes().Where(attribute => !attribute.IsNamespaceDeclaration && attribute.Name != "id"))
        {
            attribute.Value = LongNumber().Replace(attribute.Value, match => Math.Round(decimal.Parse(match.Value, CultureInfo.InvariantCulture), 1).ToString(CultureInfo.InvariantCulture));
        }

        var (width, height) = (root.Attribute("width")!.Value, root.Attribute("height")!.Value);
        root.SetAttributeValue("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {width} {height}"));
        root.Attribute("width")!.Remove();
        root.Attribute("height")!.Remove();
        root.SetAttributeValue("role", "img");
        root.SetAttributeValue("style", $"max-width:{width}px");
        root.SetAttributeValue("aria-labelledby", $"{id}-title {id}-desc");
        root.AddFirst(
            new XElement(Svg + "title", new XAttribute("id", $"{id}-title"), title),
            new XElement(Svg + "desc", new XAttribute("id", $"{id}-desc"), description));
        return root.ToString(SaveOptions.DisableFormatting);
    }

    /// <summary>The drawing library counts its identifiers through the whole process; a report must not depend on what was drawn before.</summary>
    private static void Rename(XElement root, string id)
    {
        var names = root.Descendants().Attributes("id").Select((attribute, index) => (attribute.Value, index)).ToDictionary(pair => pair.Value, pair => string.Create(CultureInfo.InvariantCulture, $"{id}-{pair.index}"));
        foreach (var attribute in root.Descendants().Attributes())
        {
            attribute.Value = attribute.Name == "id" ? names[attribute.Value]
                : attribute.Name == Link + "href" && attribute.Value.StartsWith('#') ? $"#{names[attribute.Value[1..]]}"
                : Reference().Replace(attribute.Value, match => $"url(#{names[match.Groups[1].Value]})");
        }
    }

    /// <summary>The library cannot write dashes into SVG; a pattern travels in the hundredths of the line's width (<see cref="LineDash"/>).</summary>
    private static void Dash(XElement element)
    {
        if (element.Attribute("stroke-width") is { } width && LineDash.Find(width.Value) is { } dash)
        {
            element.SetAttributeValue("stroke-dasharray", dash);
        }
    }

    [GeneratedRegex(@"-?\d+\.\d{2,}")]
    private static partial Regex LongNumber();

    [GeneratedRegex(@"url\(#([^)]+)\)")]
    private static partial Regex Reference();
}
