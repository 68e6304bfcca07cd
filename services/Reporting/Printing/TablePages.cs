using System.Globalization;

namespace LabPipeline.Reporting.Printing;

/// <summary>Lays a list out on A4 pages. A text that does not fit its cell is refused, never cut.</summary>
internal sealed class TablePages(TableSheet sheet, TextWidths widths)
{
    private const double Margin = 14;
    private const double RowHeight = 7.4;
    private const double TextSize = 3.4;
    private const double SmallSize = 2.6;
    private const double TickBox = 4;
    private const double Padding = 1.2;
    private const double Inner = Page.A4Short - (2 * Margin);

    private double Foot => Page.A4Long - Margin - (sheet.Cautions.Sum(caution => Wrapped(caution).Count) * SmallSize * 1.35) - 3;

    private double TableTop => Margin + 16 + (sheet.Lines.Sum(line => Wrapped(line).Count) * SmallSize * 1.5) + 8;

    /// <exception cref="PrintException">A text does not fit its cell.</exception>
    public IReadOnlyList<Page> Pages()
    {
        var perPage = Math.Max(1, (int)((Foot - TableTop - RowHeight) / RowHeight));
        var parts = sheet.Sections.SelectMany(section => section.Rows.Chunk(perPage).Select(rows => (section.Heading, Rows: rows))).ToList();
        return [.. parts.Select((part, index) => new Page(Page.A4Short, Page.A4Long, [.. Head(part.Heading, index + 1, parts.Count), .. Rows(part.Rows), .. Cautions()]))];
    }

    private IEnumerable<Mark> Head(string heading, int page, int pages)
    {
        var count = string.Create(CultureInfo.InvariantCulture, $"page {page} of {pages}");
        yield return new Mark.Words(Margin, Margin + 5, sheet.Title, 5.2, Bold: true);
        yield return new Mark.Words(Margin + Inner - widths.Of(count, SmallSize, bold: false), Margin + 5, count, SmallSize);
        yield return new Mark.Words(Margin, Margin + 12, heading, 4.4, Bold: true);
        foreach (var (line, index) in sheet.Lines.SelectMany(Wrapped).Select((line, index) => (line, index)))
        {
            yield return new Mark.Words(Margin, Margin + 17 + (index * SmallSize * 1.5), line, SmallSize);
        }

        yield return new Mark.Fill(Margin, TableTop - RowHeight, Inner, RowHeight, 0.12);
        foreach (var (column, left, _) in Places())
        {
            yield return new Mark.Words(left + Padding, TableTop - 2.4, column.Title, SmallSize, Bold: true);
        }
    }

    private IEnumerable<Mark> Rows(IReadOnlyList<IReadOnlyList<string>> rows)
    {
        foreach (var (row, index) in rows.Select((row, index) => (row, index)))
        {
            var top = TableTop + (index * RowHeight);
            foreach (var mark in row.Count == 1 ? Note(row[0], top) : Cells(row, top))
            {
                yield return mark;
            }

            yield return new Mark.Frame(Margin, top, Inner, RowHeight, 0.15);
        }
    }

    private IEnumerable<Mark> Note(string text, double top)
    {
        Require(text, Inner - TickBox - (4 * Padding), bold: false, "a note");
        yield return new Mark.Fill(Margin, top, Inner, RowHeight, 0.06);
        yield return new Mark.Frame(Margin + Padding, top + ((RowHeight - TickBox) / 2), TickBox, TickBox);
        yield return new Mark.Words(Margin + TickBox + (3 * Padding), top + (RowHeight * 0.66), text, TextSize);
    }

    /// <summary>The first cell is the box to tick; what stands in the row fills the rest.</summary>
    private IEnumerable<Mark> Cells(IReadOnlyList<string> row, double top)
    {
        foreach (var (column, left, index) in Places())
        {
            var width = (column.Share * Inner) - (2 * Padding);
            if (column.Title.Length == 0)
            {
                yield return new Mark.Frame(left + Padding, top + ((RowHeight - TickBox) / 2), TickBox, TickBox, 0.3);
                continue;
            }

            Require(row[index], width, column.Bold, $"column {column.Title}");
            yield return new Mark.Words(left + Padding, top + (RowHeight * 0.66), row[index], TextSize, column.Bold);
        }
    }

    private IEnumerable<Mark> Cautions() => sheet.Cautions.SelectMany(Wrapped)
        .Select((line, index) => new Mark.Words(Margin, Foot + 5 + (index * SmallSize * 1.35), line, SmallSize));

    private IEnumerable<(TableColumn Column, double Left, int Index)> Places()
    {
        var left = Margin;
        foreach (var (column, index) in sheet.Columns.Select((column, index) => (column, index)))
        {
            yield return (column, left, index);
            left += column.Share * Inner;
        }
    }

    private List<string> Wrapped(string text)
    {
        var lines = new List<string> { "" };
        foreach (var word in text.Split(' '))
        {
            var longer = lines[^1].Length == 0 ? word : $"{lines[^1]} {word}";
            if (lines[^1].Length > 0 && widths.Of(longer, SmallSize, bold: false) > Inner)
            {
                lines.Add(word);
            }
            else
            {
                lines[^1] = longer;
            }
        }

        return lines;
    }

    private void Require(string text, double width, bool bold, string where)
    {
        var needed = widths.Of(text, TextSize, bold);
        if (needed > width)
        {
            throw new PrintException(string.Create(
                CultureInfo.InvariantCulture, $"{sheet.Title}, {where}: found '{text}', {needed:0.0} mm wide; expected at most {width:0.0} mm. Shorten it in the plan; nothing is cut."));
        }
    }
}
