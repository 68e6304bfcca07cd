using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Rows of delimited text (RFC 4180 quoting, any single delimiter), read strictly: a quote stands around a whole cell or nowhere.</summary>
internal sealed class DelimitedRows : IRowSource
{
    private readonly RowFeed _feed;
    private readonly CharWindow _window;
    private readonly TextRule _text;
    private readonly DelimitedScan _row;
    private int _rowStart;

    public DelimitedRows(RowFeed feed, TextRule text)
    {
        _feed = feed;
        _window = feed.Window;
        _text = text;
        _row = new DelimitedScan(text.Delimiter, text.Quote, feed.Limits.MaxColumns);
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
            Columns = [.. Enumerable.Range(0, _row.Count).Select(column => Cell(column).ToString())];
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

        RowFault = _row.Count != Columns.Count ? FaultCatalogue.RaggedRow(Line, _row.Count, Columns.Count) : LongCell();
        return true;
    }

    public ReadOnlySpan<char> Cell(int column)
    {
        ref readonly var cell = ref _row.Cell(column);
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
            var scan = _row.Scan(_window.Unread, _window.Ended);
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
        if (_row.Length > _feed.Limits.MaxLineLength)
        {
            return Refuse(RowScan.More);
        }

        if (_window.Ended && _row.Length == _window.Unread.Length && _window.Unread[^1] != '\n' && _feed.CutHere())
        {
            return false;
        }

        _rowStart = _window.Position;
        for (var column = 0; column < _row.Count; column++)
        {
            if (_row.Cell(column).Escaped)
            {
                Unescape(ref _row.Cell(column));
            }
        }

        _feed.Pass(_row.Length, _row.LineEnds);
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

    private void Unescape(ref DelimitedCell cell)
    {
        var text = _window.At(_rowStart + cell.Start, cell.Length);
        var length = 0;
        for (var index = 0; index < text.Length; index++)
        {
            text[length++] = text[index];
            index += text[index] == _text.Quote ? 1 : 0;
        }

        cell = cell with { Length = length, Escaped = false };
    }

    private Fault? LongCell()
    {
        if (_row.Length <= _feed.Limits.MaxCellLength)
        {
            return null;
        }

        for (var column = 0; column < _row.Count; column++)
        {
            var length = _row.Cell(column).Length;
            if (length > _feed.Limits.MaxCellLength)
            {
                return FaultCatalogue.CellTooLong(PlaceOf(column), length, _feed.Limits.MaxCellLength);
            }
        }

        return null;
    }
}
