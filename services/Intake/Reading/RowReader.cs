using LabPipeline.Intake.Profiles;
using LabPipeline.Science.Quantities;

namespace LabPipeline.Intake.Reading;

/// <summary>Turns the current row into its readings: all of them, or none and the reason.</summary>
internal sealed class RowReader
{
    private readonly IRowSource _rows;
    private readonly IdentityReader _identity;
    private readonly ValueReader _values;
    private readonly MissingTexts _missing;
    private readonly BoundQuantity[] _quantities;
    private readonly Dictionary<string, BoundQuantity?>.AlternateLookup<ReadOnlySpan<char>> _map;
    private readonly int _quantityColumn = -1;
    private readonly ParsedReading[] _readings;
    private readonly int[] _missed;
    private int _count;
    private int _missedCount;

    public RowReader(Profile profile, IRowSource rows, IReadOnlyDictionary<string, int> columns, MissingTexts missing)
    {
        _rows = rows;
        _missing = missing;
        _identity = new IdentityReader(profile, rows, columns);
        _values = new ValueReader(profile, rows, missing);
        _quantities = [.. profile.Quantities.Select(rule => BoundQuantity.Of(rule, columns))];
        var map = new Dictionary<string, BoundQuantity?>(StringComparer.Ordinal);
        if (profile.OneValueRows is { } oneValue)
        {
            _quantityColumn = columns[oneValue.QuantityColumn];
            foreach (var (name, rule) in oneValue.Map)
            {
                map.Add(name, BoundQuantity.Of(rule, columns));
            }

            foreach (var name in oneValue.Ignored)
            {
                map.Add(name, null);
            }
        }

        _map = map.GetAlternateLookup<ReadOnlySpan<char>>();
        _readings = new ParsedReading[Math.Max(1, _quantities.Length)];
        _missed = new int[_readings.Length];
    }

    /// <summary>The readings of the row read last.</summary>
    public ReadOnlySpan<ParsedReading> Readings => _readings.AsSpan(0, _count);

    /// <summary>Reads the current row; null when it is good, and only then are its missing values counted.</summary>
    public Fault? Read()
    {
        _count = 0;
        _missedCount = 0;
        _values.Clear();
        var fault = _rows.RowFault ?? ReadRow();
        if (fault is not null)
        {
            _count = 0;
            return fault;
        }

        foreach (var index in _missed.AsSpan(0, _missedCount))
        {
            _missing.Count(index);
        }

        return null;
    }

    private Fault? ReadRow()
    {
        if (_quantityColumn >= 0)
        {
            return ReadOneValue();
        }

        var fault = _identity.Read();
        for (var index = 0; fault is null && index < _quantities.Length; index++)
        {
            fault = ReadValue(_quantities[index]);
        }

        return fault;
    }

    private Fault? ReadOneValue()
    {
        var name = _rows.Cell(_quantityColumn);
        if (!_map.TryGetValue(name, out var quantity))
        {
            return FaultCatalogue.UnknownQuantity(_rows.PlaceOf(_quantityColumn), name);
        }

        return quantity is null ? null : _identity.Read() ?? ReadValue(quantity);
    }

    private Fault? ReadValue(BoundQuantity quantity)
    {
        // A control or a fry batch carries only some of the quantities of a sample.
        var missingAllowed = quantity.Rule.MissingAllowed || _identity.Identity.Subject != ReadingSubject.Sample;
        var fault = _values.Read(quantity, missingAllowed, out var value);
        if (fault is not null)
        {
            return fault;
        }

        if (value.MissingText >= 0)
        {
            _missed[_missedCount++] = value.MissingText;
            return null;
        }

        _readings[_count++] = Reading(_identity.Identity, quantity.Rule.Quantity, value);
        return null;
    }

    private ParsedReading Reading(RowIdentity identity, Quantity quantity, in ParsedValue value) => new(
        identity.Subject,
        _rows.Line,
        identity.Instrument,
        identity.Run,
        identity.RowKey,
        quantity,
        identity.Barcode,
        identity.Material,
        value.Value,
        value.BelowLimit,
        value.Raw,
        value.Unit,
        identity.Extract,
        identity.Replicate,
        identity.Tuber,
        identity.Slice,
        identity.Operator,
        identity.MeasuredAt,
        identity.MeasuredAtRaw);
}
