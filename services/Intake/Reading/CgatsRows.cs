using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Reading;

/// <summary>
/// Rows of colour text (ISO 28178, CGATS.17): keyword lines, the data format naming the columns, then one line a data set. One table a file.
/// Header keywords the profile names become columns with the same text in every row.
/// </summary>
internal sealed class CgatsRows : IRowSource
{
    private const string End = "END_DATA";

    private readonly RowFeed _feed;
    private readonly IReadOnlySet<string> _wanted;
    private readonly CgatsLine _line;
    private readonly List<string> _fields = [];
    private readonly Dictionary<string, string> _keywords = new(StringComparer.Ordinal);
    private string[] _constants = [];
    private int _rowStart;
    private int _rowLength;
    private long? _declaredSets;
    private long? _declaredFields;
    private long _sets;

    public CgatsRows(RowFeed feed, IReadOnlySet<string> wanted)
    {
        _feed = feed;
        _wanted = wanted;
        _line = new CgatsLine(feed.Limits.MaxColumns);
    }

    public IReadOnlyList<string> Columns { get; private set; } = [];

    public int HeaderLine { get; private set; }

    public int Line { get; private set; }

    public Fault? RowFault { get; private set; }

    private ReadOnlySpan<char> Current => _feed.Window.At(_rowStart, _rowLength);

    public bool Open()
    {
        for (var first = true; NextLine(); first = false)
        {
            var word = _line.Word(Current, 0);
            if (word is "BEGIN_DATA_FORMAT")
            {
                HeaderLine = Line;
                if (!ReadFields())
                {
                    return false;
                }
            }
            else if (word is "BEGIN_DATA")
            {
                return CompleteColumns();
            }
            else if (!ReadKeyword(word.ToString(), first))
            {
                return false;
            }
        }

        return _feed.EndBeforeHeader(Line);
    }

    public bool Next()
    {
        RowFault = null;
        if (!NextLine())
        {
            return false;
        }

        if (_line.Word(Current, 0) is End)
        {
            Finish();
            return false;
        }

        _sets++;
        RowFault = _line.Count != _fields.Count ? FaultCatalogue.RaggedRow(Line, _line.Count, _fields.Count) : LongCell();
        return true;
    }

    public ReadOnlySpan<char> Cell(int column) =>
        column < _fields.Count ? CellText.Trim(_line.Word(Current, column)) : _constants[column - _fields.Count];

    public CellPlace PlaceOf(int column) => column < _fields.Count ? new(Line, column + 1, Columns[column]) : new(Line, 0, Columns[column]);

    private bool NextLine()
    {
        do
        {
            if (!_feed.SeekRow())
            {
                return MissEnd();
            }

            Line = _feed.Line;
            var length = _feed.LineLength(out var lineEnd);
            if (length < 0)
            {
                return false;
            }

            _rowStart = _feed.Window.Position;
            _rowLength = length;
            _feed.Pass(length + lineEnd, lineEnd);
            if (!Divided())
            {
                return false;
            }
        }
        while (_line.Count == 0);
        return true;
    }

    private bool Divided()
    {
        switch (_line.Divide(Current))
        {
            case RowScan.Row:
                return true;
            case RowScan.TooManyColumns:
                _feed.Stop(FaultCatalogue.TooManyColumns(Line, _feed.Limits.MaxColumns));
                return false;
            case RowScan.UnclosedQuote:
                _feed.Stop(FaultCatalogue.UnclosedQuote(Line, Current));
                return false;
            default:
                _feed.Stop(FaultCatalogue.MisplacedQuote(Line, Current));
                return false;
        }
    }

    private bool ReadFields()
    {
        if (_fields.Count > 0)
        {
            return Refuse("one data format");
        }

        while (NextLine())
        {
            for (var index = 0; index < _line.Count; index++)
            {
                var word = _line.Word(Current, index);
                if (word is "END_DATA_FORMAT")
                {
                    return true;
                }

                if (_fields.Count == _feed.Limits.MaxColumns)
                {
                    _feed.Stop(FaultCatalogue.TooManyColumns(Line, _feed.Limits.MaxColumns));
                    return false;
                }

                _fields.Add(word.ToString());
            }
        }

        return false;
    }

    private bool ReadKeyword(string keyword, bool first)
    {
        if (_line.Count > 2 || (_line.Count == 1 && !first))
        {
            return Refuse("a keyword and its value");
        }

        var value = _line.Count == 2 ? CellText.Trim(_line.Word(Current, 1)).ToString() : "";
        if (keyword is "NUMBER_OF_SETS" or "NUMBER_OF_FIELDS")
        {
            if (NumberGrammar.Parse(value, NumberFormat.Point, out var number) != NumberFault.None || number != decimal.Truncate(number) || number < 0)
            {
                return Refuse("a keyword and a whole number");
            }

            _declaredSets = keyword is "NUMBER_OF_SETS" ? (long)number : _declaredSets;
            _declaredFields = keyword is "NUMBER_OF_FIELDS" ? (long)number : _declaredFields;
        }

        if (_wanted.Contains(keyword) && !_keywords.TryAdd(keyword, value))
        {
            _feed.Stop(FaultCatalogue.DuplicateColumn(new CellPlace(Line, 0, keyword)));
            return false;
        }

        return true;
    }

    private bool CompleteColumns()
    {
        if (_fields.Count == 0)
        {
            return Refuse("BEGIN_DATA_FORMAT before BEGIN_DATA");
        }

        if (_declaredFields is { } declared && declared != _fields.Count)
        {
            _feed.Stop(FaultCatalogue.ColourTextCount(HeaderLine, _fields.Count, "fields", declared));
            return false;
        }

        Columns = [.. _fields, .. _keywords.Keys];
        _constants = [.. _keywords.Values];
        return true;
    }

    private void Finish()
    {
        if (_declaredSets is { } declared && declared != _sets)
        {
            _feed.Stop(FaultCatalogue.ColourTextCount(Line, _sets, "data sets", declared));
        }

        _feed.SeeTrailer();
        _feed.SeekRow();
    }

    private bool Refuse(string expected)
    {
        _feed.Stop(FaultCatalogue.ColourTextFormat(Line, Current, expected));
        return false;
    }

    private bool MissEnd()
    {
        _feed.MissEnd(End);
        return false;
    }

    private Fault? LongCell()
    {
        for (var column = 0; column < _line.Count; column++)
        {
            var length = _line.Word(Current, column).Length;
            if (length > _feed.Limits.MaxCellLength)
            {
                return FaultCatalogue.CellTooLong(PlaceOf(column), length, _feed.Limits.MaxCellLength);
            }
        }

        return null;
    }
}
