using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Rows written as blocks of "key = value" lines, as balances print them; a separator line ends a block.</summary>
internal sealed class KeyValueRows : IRowSource
{
    private readonly RowFeed _feed;
    private readonly TextRule _text;
    private readonly bool _unknownIgnored;
    private readonly ISet<string> _ignored;
    private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> _numbers;
    private readonly BlockCell[] _cells;
    private char[] _block = new char[256];
    private int _length;

    /// <remarks>
    /// <c>names</c>: every key the profile reads or leaves unread on purpose. <c>ignored</c> receives other keys met, where the profile lets them pass.
    /// </remarks>
    public KeyValueRows(RowFeed feed, Profile profile, IReadOnlyList<string> names, ISet<string> ignored)
    {
        _feed = feed;
        _text = profile.Text;
        _unknownIgnored = profile.UnknownColumns == UnknownColumns.Ignore;
        _ignored = ignored;
        Columns = names;
        _cells = new BlockCell[names.Count];
        _numbers = names.Select((name, number) => (name, number)).ToDictionary(pair => pair.name, pair => pair.number, StringComparer.Ordinal)
            .GetAlternateLookup<ReadOnlySpan<char>>();
    }

    public IReadOnlyList<string> Columns { get; }

    public int HeaderLine => 0;

    public int Line { get; private set; }

    public Fault? RowFault { get; private set; }

    public bool Open()
    {
        for (var line = 0; line < _text.SkipLines && _feed.SkipLine(); line++)
        {
        }

        return true;
    }

    public bool Next()
    {
        RowFault = null;
        Line = 0;
        _length = 0;
        Array.Clear(_cells);
        while (_feed.SeekRow(blankLinesCount: _text.BlockSeparator.Length == 0))
        {
            var line = _feed.Line;
            var length = _feed.LineLength(out var lineEnd);
            if (length < 0)
            {
                return false;
            }

            var text = CellText.Trim(_feed.Window.At(_feed.Window.Position, length));
            _feed.Pass(length + lineEnd, lineEnd);
            if (!text.Equals(_text.BlockSeparator, StringComparison.Ordinal))
            {
                Line = Line == 0 ? line : Line;
                RowFault ??= Take(text, line);
                if (_length > _feed.Limits.MaxLineLength)
                {
                    _feed.Stop(FaultCatalogue.LineTooLong(Line, _feed.Limits.MaxLineLength));
                    return false;
                }
            }
            else if (Line > 0)
            {
                return true;
            }
        }

        return Line > 0 && _feed.EndedWell;
    }

    public ReadOnlySpan<char> Cell(int column) => _block.AsSpan(_cells[column].Start, _cells[column].Length);

    public CellPlace PlaceOf(int column) => new(_cells[column].Line == 0 ? Line : _cells[column].Line, 0, Columns[column]);

    private Fault? Take(ReadOnlySpan<char> text, int line)
    {
        var at = text.IndexOf(_text.KeySeparator, StringComparison.Ordinal);
        if (at <= 0)
        {
            return FaultCatalogue.KeyFormat(line, text, _text.KeySeparator);
        }

        var key = CellText.Trim(text[..at]);
        var value = CellText.Trim(text[(at + _text.KeySeparator.Length)..]);
        if (!_numbers.TryGetValue(key, out var column))
        {
            return Unknown(key, line);
        }

        if (_cells[column].Line > 0)
        {
            return FaultCatalogue.DuplicateKey(new CellPlace(line, 0, Columns[column]));
        }

        if (value.Length > _feed.Limits.MaxCellLength)
        {
            return FaultCatalogue.CellTooLong(new CellPlace(line, 0, Columns[column]), value.Length, _feed.Limits.MaxCellLength);
        }

        _cells[column] = new BlockCell(_length, value.Length, line);
        Append(value);
        return null;
    }

    private Fault? Unknown(ReadOnlySpan<char> key, int line)
    {
        if (!_unknownIgnored)
        {
            return FaultCatalogue.UnknownColumn(new CellPlace(line, 0, key.ToString()));
        }

        // Bounded: a hostile file could bring a new key on every line.
        if (_ignored.Count < _feed.Limits.MaxColumns)
        {
            _ignored.Add(key.ToString());
        }

        return null;
    }

    private void Append(ReadOnlySpan<char> value)
    {
        if (_length + value.Length > _block.Length)
        {
            Array.Resize(ref _block, Math.Max(_block.Length * 2, _length + value.Length));
        }

        value.CopyTo(_block.AsSpan(_length));
        _length += value.Length;
    }
}
