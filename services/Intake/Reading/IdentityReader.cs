using LabPipeline.Intake.Profiles;
using LabPipeline.Science.Barcodes;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Reading;

/// <summary>Reads what a row is about: subject, barcode or material, instrument, run, extract, replicate, tuber, slice, operator, time, key.</summary>
internal sealed class IdentityReader
{
    private const int LargestCount = 9999;

    private readonly IRowSource _rows;
    private readonly ReadingSubject _subject;
    private readonly SubjectRule[] _rules;
    private readonly TimeReader? _time;
    private readonly BoundSource _instrument;
    private readonly BoundSource _run;
    private readonly BoundSource _barcode;
    private readonly BoundSource _operator;
    private readonly BoundSource _extract;
    private readonly BoundSource _replicate;
    private readonly BoundSource _tuber;
    private readonly BoundSource _slice;
    private readonly BoundSource _material;
    private readonly int[] _key;
    private readonly TuberHalf? _half;
    private readonly TextPool _pool = new();
    private readonly KeyText _keyText = new();
    private string _lastInstrument = "";
    private string _lastRun = "";
    private string _lastOperator = "";
    private string _lastExtract = "";
    private string _lastMaterial = "";
    private string _lastCode = "";
    private string _lastBarcode = "";

    public IdentityReader(Profile profile, IRowSource rows, IReadOnlyDictionary<string, int> columns)
    {
        _rows = rows;
        _subject = profile.Subject;
        _rules = SubjectRule.Of(profile, columns);
        _time = profile.Time is { } time ? new TimeReader(time, rows, columns) : null;
        var identity = profile.Identity;
        _instrument = BoundSource.Of(identity.Instrument, columns);
        _run = BoundSource.Of(identity.Run, columns);
        _barcode = BoundSource.Of(identity.Barcode, columns);
        _operator = BoundSource.Of(identity.Operator, columns);
        _extract = BoundSource.Of(identity.Extract, columns);
        _replicate = BoundSource.Of(identity.Replicate, columns);
        _tuber = BoundSource.Of(identity.Tuber, columns);
        _slice = BoundSource.Of(identity.Slice, columns);
        _material = BoundSource.Of(identity.Material, columns);
        _half = HalfRule.HalfOf(profile);
        _key = [.. profile.RowKey.Select(name => columns[name])];
    }

    /// <summary>The identity of the row read last, when it was complete.</summary>
    public RowIdentity Identity { get; } = new();

    /// <summary>Null when the row's identity is complete; otherwise what is wrong with it.</summary>
    public Fault? Read()
    {
        var identity = Identity;
        var fault = ReadText(_instrument, ref _lastInstrument, FactText.LongestInstrument, true, out identity.Instrument!)
            ?? ReadText(_run, ref _lastRun, FactText.LongestRun, true, out identity.Run!)
            ?? ReadSubject(identity)
            ?? ReadParts(identity);
        if (fault is null && _time is not null)
        {
            fault = _time.Read(out identity.MeasuredAt, out identity.MeasuredAtRaw);
        }

        if (fault is null)
        {
            identity.RowKey = Key(identity);
            fault = identity.RowKey.Length > FactText.LongestRowKey
                ? FaultCatalogue.KeyTooLong(_rows.Line, identity.RowKey.Length, FactText.LongestRowKey)
                : null;
        }

        return fault;
    }

    private Fault? ReadSubject(RowIdentity identity)
    {
        var (subject, material) = (_subject, _material);
        foreach (var rule in _rules)
        {
            if (rule.When.Holds(_rows.Cell(rule.Column)))
            {
                (subject, material) = (rule.Subject, rule.Material);
                break;
            }
        }

        identity.Subject = subject;
        identity.Material = null;
        if (subject == ReadingSubject.Sample)
        {
            return ReadBarcode(identity);
        }

        identity.Barcode = null;
        return ReadText(material, ref _lastMaterial, FactText.LongestMaterial, true, out identity.Material);
    }

    private Fault? ReadBarcode(RowIdentity identity)
    {
        var text = _barcode.Read(_rows);
        if (text.IsEmpty)
        {
            return FaultCatalogue.MissingCell(_barcode.Place(_rows));
        }

        // Replicates and slices of a sample stand in neighbouring rows.
        if (text.SequenceEqual(_lastCode))
        {
            identity.Barcode = _lastBarcode;
            return null;
        }

        var code = text.ToString();
        var (reading, half) = HalfCode.Read(code);
        if (reading.Barcode is not { } barcode)
        {
            return reading.Refusal == BarcodeRefusal.CheckCharacter
                ? FaultCatalogue.BarcodeCheck(_barcode.Place(_rows), text)
                : FaultCatalogue.BarcodeFormat(_barcode.Place(_rows), text);
        }

        if (half is not null && _half is { } expected && half != expected)
        {
            return FaultCatalogue.BarcodeHalf(_barcode.Place(_rows), text, expected);
        }

        (_lastCode, _lastBarcode) = (code, barcode.Text);
        identity.Barcode = _lastBarcode;
        return null;
    }

    private Fault? ReadParts(RowIdentity identity)
    {
        // Control materials and fry batches have no extract or tuber: their cells may be empty.
        var sample = identity.Subject == ReadingSubject.Sample;
        return ReadText(_operator, ref _lastOperator, FactText.LongestOperator, _operator.Required, out identity.Operator)
            ?? ReadText(_extract, ref _lastExtract, FactText.LongestExtract, sample && _extract.Required, out identity.Extract)
            ?? ReadCount(_replicate, sample, out identity.Replicate)
            ?? ReadCount(_tuber, sample, out identity.Tuber)
            ?? ReadCount(_slice, sample, out identity.Slice);
    }

    private Fault? ReadText(in BoundSource source, ref string last, int longest, bool required, out string? text)
    {
        text = null;
        if (!source.Exists)
        {
            return null;
        }

        var cell = source.Read(_rows);
        if (cell.IsEmpty)
        {
            return required ? FaultCatalogue.MissingCell(source.Place(_rows)) : null;
        }

        if (cell.Length > longest)
        {
            return FaultCatalogue.CellTooLong(source.Place(_rows), cell.Length, longest);
        }

        text = _pool.Get(cell, ref last);
        return null;
    }

    private Fault? ReadCount(in BoundSource source, bool sample, out int? count)
    {
        count = null;
        if (!source.Exists)
        {
            return null;
        }

        var cell = source.Read(_rows);
        if (cell.IsEmpty)
        {
            return sample && source.Required ? FaultCatalogue.MissingCell(source.Place(_rows)) : null;
        }

        var number = 0;
        foreach (var symbol in cell)
        {
            number = symbol is >= '0' and <= '9' && number <= LargestCount ? (number * 10) + (symbol - '0') : LargestCount + 1;
        }

        if (number > LargestCount)
        {
            return FaultCatalogue.Count(source.Place(_rows), cell);
        }

        count = number;
        return null;
    }

    private PassingText Key(RowIdentity identity)
    {
        _keyText.Clear();
        foreach (var column in _key)
        {
            // The barcode as it is stored, so that a differently typed export of the same row has the same key.
            _keyText.Add(column == _barcode.Column && identity.Barcode is { } barcode ? barcode : _rows.Cell(column));
        }

        if (_key.Length == 0)
        {
            _keyText.Add(identity.Barcode ?? identity.Material);
            _keyText.Add(identity.Extract);
            _keyText.Add(identity.Replicate);
            _keyText.Add(identity.Tuber);
            _keyText.Add(identity.Slice);
            if (identity.Subject != ReadingSubject.Sample)
            {
                _keyText.Add(identity.MeasuredAtRaw.Span);
            }
        }

        return _keyText.Build();
    }
}
