using System.Net;
using System.Text;

namespace LabPipeline.Reporting.Report;

/// <summary>Writes a page piece by piece; every text from outside is encoded here and nowhere else.</summary>
internal sealed class HtmlPage
{
    private readonly StringBuilder _text = new();

    public static string Encode(string text) => WebUtility.HtmlEncode(text);

    public HtmlPage Raw(string html)
    {
        _text.Append(html).Append('\n');
        return this;
    }

    public HtmlPage Heading(int level, string id, string text) => Raw($"<h{level} id=\"{id}\">{Encode(text)}</h{level}>");

    public HtmlPage Paragraph(string text) => Raw($"<p>{Encode(text)}</p>");

    public HtmlPage Note(string text) => Raw($"<p class=\"note\">{Encode(text)}</p>");

    public HtmlPage List(IEnumerable<string> texts) => Raw($"<ul>{string.Concat(texts.Select(text => $"<li>{Encode(text)}</li>"))}</ul>");

    /// <summary>Terms and what they are.</summary>
    public HtmlPage Facts(IEnumerable<(string Name, string Value)> facts) =>
        Raw($"<dl>{string.Concat(facts.Select(fact => $"<dt>{Encode(fact.Name)}</dt><dd>{Encode(fact.Value)}</dd>"))}</dl>");

    public HtmlPage Table(HtmlTable table) => Raw(table.ToHtml());

    public override string ToString() => _text.ToString();
}
