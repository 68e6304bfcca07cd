namespace LabPipeline.Intake.Reading;

/// <summary>Divides a line of CGATS.17 text: words parted by blanks or tabs, quotes around words that hold some, # begins a comment.</summary>
internal sealed class CgatsLine(int mostWords)
{
    private readonly List<DelimitedCell> _words = [];

    public int Count => _words.Count;

    /// <summary>What kept the line from being divided; <see cref="RowScan.Row"/> when nothing did.</summary>
    public RowScan Divide(ReadOnlySpan<char> line)
    {
        _words.Clear();
        var position = 0;
        while (true)
        {
            while (position < line.Length && IsBlank(line[position]))
            {
                position++;
            }

            if (position == line.Length || line[position] == '#')
            {
                return RowScan.Row;
            }

            if (_words.Count == mostWords)
            {
                return RowScan.TooManyColumns;
            }

            var scan = line[position] == '"' ? Quoted(line, ref position) : Plain(line, ref position);
            if (scan != RowScan.Row)
            {
                return scan;
            }
        }
    }

    public ReadOnlySpan<char> Word(ReadOnlySpan<char> line, int index) => line.Slice(_words[index].Start, _words[index].Length);

    private RowScan Plain(ReadOnlySpan<char> line, ref int position)
    {
        var start = position;
        while (position < line.Length && !IsBlank(line[position]))
        {
            if (line[position] == '"')
            {
                return RowScan.MisplacedQuote;
            }

            position++;
        }

        _words.Add(new DelimitedCell(start, position - start, false));
        return RowScan.Row;
    }

    private RowScan Quoted(ReadOnlySpan<char> line, ref int position)
    {
        var start = position + 1;
        var length = line[start..].IndexOf('"');
        if (length < 0)
        {
            return RowScan.UnclosedQuote;
        }

        position = start + length + 1;
        if (position < line.Length && !IsBlank(line[position]))
        {
            return RowScan.MisplacedQuote;
        }

        _words.Add(new DelimitedCell(start, length, false));
        return RowScan.Row;
    }

    private static bool IsBlank(char symbol) => symbol is ' ' or '\t' or '\r';
}
