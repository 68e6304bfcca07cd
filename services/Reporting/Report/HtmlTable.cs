using System.Globalization;
using System.Text;

namespace LabPipeline.Reporting.Report;

/// <summary>A table that a screen reader can follow: caption, column heads, row heads.</summary>
internal sealed class HtmlTable(string caption, params IReadOnlyList<string> heads)
{
    private readonly List<string> _body = [];
    private readonly List<string> _foot = [];

    /// <summary>Columns from the left that are row heads.</summary>
    public int RowHeads { get; init; } = 1;

    public string Class { get; init; } = "";

    public string Id { get; init; } = "";

    public bool IsEmpty => _body.Count == 0;

    /// <summary>A line of plain texts.</summary>
    public HtmlTable Row(params IReadOnlyList<string> cells) => RowOfHtml([.. cells.Select(HtmlPage.Encode)]);

    /// <summary>A line of cells that are encoded already.</summary>
    public HtmlTable RowOfHtml(IReadOnlyList<string> cells, string id = "")
    {
        _body.Add(Line(cells, id));
        return this;
    }

    /// <summary>A line across the whole table that belongs to the one before, encoded already.</summary>
    public HtmlTable Under(string html)
    {
        _body.Add($"<tr class=\"under\"><td colspan=\"{heads.Count.ToString(CultureInfo.InvariantCulture)}\">{html}</td></tr>");
        return this;
    }

    public HtmlTable Foot(params IReadOnlyList<string> cells)
    {
        _foot.Add(Line([.. cells.Select(HtmlPage.Encode)], ""));
        return this;
    }

    public string ToHtml()
    {
        var text = new StringBuilder("<div class=\"wide\"><table")
            .Append(Id.Length == 0 ? "" : $" id=\"{Id}\"").Append(Class.Length == 0 ? "" : $" class=\"{Class}\"").Append("><caption>").Append(HtmlPage.Encode(caption)).Append("</caption><thead><tr>");
        foreach (var (place, head) in heads.Index())
        {
            text.Append(place < RowHeads ? "<th scope=\"col\" class=\"row\">" : "<th scope=\"col\">").Append(HtmlPage.Encode(head).Replace("\n", "<br>", StringComparison.Ordinal)).Append("</th>");
        }

        text.Append("</tr></thead><tbody>").AppendJoin("", _body).Append("</tbody>");
        if (_foot.Count > 0)
        {
            text.Append("<tfoot>").AppendJoin("", _foot).Append("</tfoot>");
        }

        return text.Append("</table></div>").ToString();
    }

    private string Line(IReadOnlyList<string> cells, string id) =>
        $"<tr{(id.Length == 0 ? "" : $" id=\"{id}\"")}>" + string.Concat(cells.Select((cell, index) => index < RowHeads ? $"<th scope=\"row\">{cell}</th>" : $"<td>{cell}</td>")) + "</tr>";
}
