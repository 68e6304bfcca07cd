using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Text;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Reading;

/// <summary>Reads the time of measurement of a row from its one or more columns.</summary>
internal sealed class TimeReader
{
    private readonly TimeRule _rule;
    private readonly IRowSource _rows;
    private readonly TimestampGrammar _grammar;
    private readonly int[] _columns;
    private char[] _joined = new char[64];
    private char[] _lastRaw = new char[FactText.LongestMeasuredAs];
    private int _lastLength;
    private DateTimeOffset _last;

    public TimeReader(TimeRule rule, IRowSource rows, IReadOnlyDictionary<string, int> columns)
    {
        _rule = rule;
        _rows = rows;
        _grammar = new TimestampGrammar(rule.Formats, rule.Zone, rule.Ambiguous);
        _columns = [.. rule.Columns.Select(name => columns[name])];
    }

    public Fault? Read(out DateTimeOffset? instant, out PassingText raw)
    {
        instant = null;
        raw = default;
        var text = _columns.Length == 1 ? _rows.Cell(_columns[0]) : Join();
        if (text.IsEmpty)
        {
            return _rule.Required ? FaultCatalogue.MissingCell(_rows.PlaceOf(_columns[0])) : null;
        }

        if (!text.SequenceEqual(_lastRaw.AsSpan(0, _lastLength)))
        {
            var fault = _grammar.Parse(text, out var parsed);
            if (fault != TimestampFault.None)
            {
                var formats = string.Join(" or ", _rule.Formats.Select(format => format.Text));
                return FaultCatalogue.Time(_rows.PlaceOf(_columns[0]), text, fault, formats, _rule.Zone.Id);
            }

            _last = parsed;
            Remember(text);
        }

        instant = _last;
        raw = new PassingText(_lastRaw.AsMemory(0, _lastLength));
        return null;
    }

    private void Remember(ReadOnlySpan<char> text)
    {
        if (text.Length > _lastRaw.Length)
        {
            _lastRaw = new char[text.Length];
        }

        text.CopyTo(_lastRaw);
        _lastLength = text.Length;
    }

    private ReadOnlySpan<char> Join()
    {
        var length = 0;
        foreach (var column in _columns)
        {
            var cell = _rows.Cell(column);
            if (length + cell.Length + 1 > _joined.Length)
            {
                Array.Resize(ref _joined, (length + cell.Length + 1) * 2);
            }

            if (length > 0)
            {
                _joined[length++] = ' ';
            }

            cell.CopyTo(_joined.AsSpan(length));
            length += cell.Length;
        }

        return _joined.AsSpan(0, length);
    }
}
