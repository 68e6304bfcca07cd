using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Text;

namespace LabPipeline.Intake.Reading;

/// <summary>Reads the time of measurement of a row from its one or more columns.</summary>
internal sealed class TimeReader
{
    private readonly TimeRule _rule;
    private readonly IRowSource _rows;
    private readonly TimestampGrammar _grammar;
    private readonly int[] _columns;
    private char[] _joined = new char[64];
    private string _lastRaw = "";
    private DateTimeOffset _last;

    public TimeReader(TimeRule rule, IRowSource rows, IReadOnlyDictionary<string, int> columns)
    {
        _rule = rule;
        _rows = rows;
        _grammar = new TimestampGrammar(rule.Formats, rule.Zone, rule.Ambiguous);
        _columns = [.. rule.Columns.Select(name => columns[name])];
    }

    public Fault? Read(out DateTimeOffset? instant, out string? raw)
    {
        instant = null;
        raw = null;
        var text = _columns.Length == 1 ? _rows.Cell(_columns[0]) : Join();
        if (text.IsEmpty)
        {
            return _rule.Required ? FaultCatalogue.MissingCell(_rows.PlaceOf(_columns[0])) : null;
        }

        if (!text.SequenceEqual(_lastRaw))
        {
            var fault = _grammar.Parse(text, out var parsed);
            if (fault != TimestampFault.None)
            {
                var formats = string.Join(" or ", _rule.Formats.Select(format => format.Text));
                return FaultCatalogue.Time(_rows.PlaceOf(_columns[0]), text, fault, formats, _rule.Zone.Id);
            }

            _last = parsed;
            _lastRaw = text.ToString();
        }

        instant = _last;
        raw = _lastRaw;
        return null;
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
