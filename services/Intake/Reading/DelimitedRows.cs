using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Rows of delimited text (RFC 4180 quoting, any single delimiter), read strictly: a quote stands around a whole cell or nowhere.</summary>
internal sealed class DelimitedRows : IRowSource
{
    private readonly RowFeed _feed;
    private readonly CharWindow _window;
    private readonly TextRule _text;
    private readonly char _delimiter;
    private readonly char _quote;
    private DelimitedCell[] _cells = new DelimitedCell[16];
    private int _count;
    private int _rowStart;
    private int _rowLength;
    private int _lineEnds;

    public DelimitedRows(RowFeed feed, TextRule text)
    {
        _feed = feed;
        _window = feed.Window;
        _text = text;
        _delimiter = text.Delimiter;

        // U+FFFF is no character: when quotes are ordinary characters, nothing is one.
        _quote = text.Quote ?? '\uFFFF';
    }

    public IReadOnlyList<string> Columns { get; private set; } = [];

    public int HeaderLine { get; private set; }

    public int Line { get; private set; }

    public Fault? RowFault { get; private set; }

    public bool Open()
    {
        for (var line = 1; line < _text.HeaderLine; line++)
        {
            if (!_feed.SkipLine())
            {
                return _feed.EndBeforeHeader(_text.HeaderLine);
            }
        }

        Columns = _text.Columns;
        if (_text.HeaderLine > 0)
        {
            if (!ReadRow())
            {
                return _feed.EndBeforeHeader(_text.HeaderLine);
            }

            HeaderLine = Line;
            Columns = [.. Enumerable.Range(0, _count).Select(column => Cell(column).ToString())];
        }

        for (var line = 0; line < _text.SkipLines && _feed.SkipLine(); line++)
        {
        }

        return true;
    }

    public bool Next()
    {
        RowFault = null;
        if (!ReadRow())
        {
            return false;
        }

        RowFault = _count != Columns.Count ? FaultCatalogue.RaggedRow(Line, _count, Columns.Count) : LongCell();
        return true;
    }

    public ReadOnlySpan<char> Cell(int column)
    {
        ref readonly var cell = ref _cells[column];
        return CellText.Trim(_window.At(_rowStart + cell.Start, cell.Length));
    }

    public CellPlace PlaceOf(int column) => new(Line, column + 1, Columns[column]);

    private bool ReadRow()
    {
        if (!_feed.SeekRow())
        {
            return false;
        }

        Line = _feed.Line;
        while (true)
        {
            var scan = Scan(_window.Unread, _window.Ended);
            if (scan == RowScan.Row)
            {
                return Accept();
            }

            if (scan is not (RowScan.More or RowScan.OpenQuote) || _window.Unread.Length > _feed.Limits.MaxLineLength)
            {
                return Refuse(scan);
            }

            _window.More();
        }
    }

    private bool Accept()
    {
        if (_rowLength > _feed.Limits.MaxLineLength)
        {
            return Refuse(RowScan.More);
        }

        if (_window.Ended && _rowLength == _window.Unread.Length && _window.Unread[^1] != '\n' && _feed.CutHere())
        {
            return false;
        }

        _rowStart = _window.Position;
        for (var column = 0; column < _count; column++)
        {
            if (_cells[column].Escaped)
            {
                Unescape(ref _cells[column]);
            }
        }

        _feed.Pass(_rowLength, _lineEnds);
        return true;
    }

    private bool Refuse(RowScan scan)
    {
        var unread = _window.Unread;
        switch (scan)
        {
            case RowScan.UnclosedQuote:
                _feed.EndInside(FaultCatalogue.UnclosedQuote(Line, unread));
                break;
            case RowScan.OpenQuote:
                _feed.Stop(FaultCatalogue.UnclosedQuote(Line, unread));
                break;
            case RowScan.MisplacedQuote:
                _feed.Stop(FaultCatalogue.MisplacedQuote(Line, unread));
                break;
            case RowScan.TooManyColumns:
                _feed.Stop(FaultCatalogue.TooManyColumns(Line, _feed.Limits.MaxColumns));
                break;
            default:
                _feed.Stop(FaultCatalogue.LineTooLong(Line, _feed.Limits.MaxLineLength));
                break;
        }

        return false;
    }

    private RowScan Scan(ReadOnlySpan<char> text, bool last)
    {
        _count = 0;
        _lineEnds = 0;
        var position = 0;
        while (true)
        {
            RowScan scan;
            if (position < text.Length && text[position] == _quote)
            {
                scan = ScanQuoted(text, ref position, last);
            }
            else
            {
                scan = ScanPlain(text, ref position, last);
            }

            if (scan != RowScan.Row)
            {
                return scan;
            }

            if (position == text.Length || text[position] == '\n')
            {
                _lineEnds += position < text.Length ? 1 : 0;
                _rowLength = Math.Min(position + 1, text.Length);
                return RowScan.Row;
            }

            position++;
        }
    }

    private RowScan ScanPlain(ReadOnlySpan<char> text, ref int position, bool last)
    {
        var length = text[position..].IndexOfAny(_delimiter, _quote, '\n');
        if (length < 0)
        {
            if (!last)
            {
                return RowScan.More;
            }

            length = text.Length - position;
        }
        else if (text[position + length] == _quote)
        {
            return RowScan.MisplacedQuote;
        }

        var start = position;
        position += length;
        return Add(new DelimitedCell(start, length, false));
    }

    private RowScan ScanQuoted(ReadOnlySpan<char> text, ref int position, bool last)
    {
        var start = position + 1;
        var from = start;
        var escaped = false;
        while (true)
        {
            var found = text[from..].IndexOf(_quote);
            if (found < 0)
            {
                return last ? RowScan.UnclosedQuote : RowScan.OpenQuote;
            }

            from += found + 1;
            if (from == text.Length && !last)
            {
                return RowScan.OpenQuote;
            }

            if (from == text.Length || text[from] != _quote)
            {
                break;
            }

            escaped = true;
            from++;
        }

        var end = from - 1;
        if (from < text.Length && text[from] == '\r')
        {
            from++;
        }

        if (from == text.Length && !last)
        {
            return RowScan.More;
        }

        if (from < text.Length && text[from] != _delimiter && text[from] != '\n')
        {
            return RowScan.MisplacedQuote;
        }

        _lineEnds += text[start..end].Count('\n');
        position = from;
        return Add(new DelimitedCell(start, end - start, escaped));
    }

    private RowScan Add(DelimitedCell cell)
    {
        if (_count == _feed.Limits.MaxColumns)
        {
            return RowScan.TooManyColumns;
        }

        if (_count == _cells.Length)
        {
            Array.Resize(ref _cells, _cells.Length * 2);
        }

        _cells[_count++] = cell;
        return RowScan.Row;
    }

    private void Unescape(ref DelimitedCell cell)
    {
        var text = _window.At(_rowStart + cell.Start, cell.Length);
        var length = 0;
        for (var index = 0; index < text.Length; index++)
        {
            text[length++] = text[index];
            index += text[index] == _quote ? 1 : 0;
        }

        cell = cell with { Length = length, Escaped = false };
    }

    private Fault? LongCell()
    {
        for (var column = 0; column < _count; column++)
        {
            if (_cells[column].Length > _feed.Limits.MaxCellLength)
            {
                return FaultCatalogue.CellTooLong(PlaceOf(column), _cells[column].Length, _feed.Limits.MaxCellLength);
            }
        }

        return null;
    }
}
