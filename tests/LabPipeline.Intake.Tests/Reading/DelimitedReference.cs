using System.Text;

namespace LabPipeline.Intake.Tests.Reading;

/// <summary>Delimited text again, slow and obvious: one character at a time over the whole text (RFC 4180, read strictly).</summary>
internal static class DelimitedReference
{
    /// <summary>The rows with their first lines, and whether a quote made the rest unreadable.</summary>
    public static (List<(int Line, List<string> Cells)> Rows, bool Broken) Read(string text)
    {
        var rows = new List<(int, List<string>)>();
        var line = 1;
        var position = 0;
        while (position < text.Length)
        {
            var lineEnd = text.IndexOf('\n', position);
            var rest = lineEnd < 0 ? text[position..] : text[position..lineEnd];
            if (rest.Trim(' ', '\t', '\r').Length == 0)
            {
                position = lineEnd < 0 ? text.Length : lineEnd + 1;
                line++;
                continue;
            }

            var first = line;
            var cells = new List<string>();
            while (true)
            {
                if (!ReadCell(text, ref position, ref line, out var cell))
                {
                    return (rows, true);
                }

                cells.Add(cell.Trim(' ', '\t', '\r', '\n'));
                if (position == text.Length)
                {
                    break;
                }

                if (text[position++] == '\n')
                {
                    line++;
                    break;
                }
            }

            rows.Add((first, cells));
        }

        return (rows, false);
    }

    private static bool ReadCell(string text, ref int position, ref int line, out string cell) =>
        position < text.Length && text[position] == '"' ? ReadQuoted(text, ref position, ref line, out cell) : ReadPlain(text, ref position, out cell);

    private static bool ReadPlain(string text, ref int position, out string cell)
    {
        var content = new StringBuilder();
        for (; position < text.Length && text[position] is not (',' or '\n'); position++)
        {
            content.Append(text[position]);
        }

        cell = content.ToString();
        return !cell.Contains('"', StringComparison.Ordinal);
    }

    private static bool ReadQuoted(string text, ref int position, ref int line, out string cell)
    {
        var content = new StringBuilder();
        var closed = false;
        position++;
        while (position < text.Length && !closed)
        {
            var symbol = text[position++];
            if (symbol != '"')
            {
                content.Append(symbol);
                line += symbol == '\n' ? 1 : 0;
            }
            else if (position < text.Length && text[position] == '"')
            {
                content.Append('"');
                position++;
            }
            else
            {
                closed = true;
            }
        }

        if (position < text.Length && text[position] == '\r')
        {
            position++;
        }

        cell = content.ToString();
        return closed && (position == text.Length || text[position] is ',' or '\n');
    }
}
