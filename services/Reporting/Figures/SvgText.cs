using System.Globalization;
using System.Xml.Linq;

namespace LabPipeline.Reporting.Figures;

/// <summary>Makes a drawing fit to stand inside a page: named for those who cannot see it, scaled by its frame, with identifiers of its own.</summary>
internal static class SvgText
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly XNamespace Link = "http://www.w3.org/1999/xlink";

    /// <param name="xml">A whole SVG document.</param>
    /// <param name="id">Unique in the page; identifiers inside get it in front.</param>
    /// <param name="title">Read out as its name.</param>
    /// <param name="description">Read out as what it shows.</param>
    public static string Accessible(string xml, string id, string title, string description)
    {
        var root = XDocument.Parse(xml).Root!;
        foreach (var attribute in root.DescendantsAndSelf().Attributes())
        {
            attribute.Value = attribute.Name == "id" ? $"{id}-{attribute.Value}"
                : attribute.Name == Link + "href" && attribute.Value.StartsWith('#') ? $"#{id}-{attribute.Value[1..]}"
                : attribute.Value.Replace("url(#", $"url(#{id}-", StringComparison.Ordinal);
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
}
