using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Keeping;

/// <summary>Holds what is stored of one file against its lines while they are read again; values known from an earlier file are not stored twice.</summary>
internal sealed class FactComparison : IReadingSink, IDisposable
{
    private readonly Dictionary<ReadingSubject, IEnumerator<KeptFact>> _kept;
    private readonly Dictionary<ReadingSubject, bool> _more = [];
    private readonly List<(ReadingSubject Subject, int QuantityId, decimal Value, string RawValue)> _ofLine = [];
    private int _line;

    /// <param name="list">What is stored about a subject, by line.</param>
    public FactComparison(Func<FactSubject, IEnumerable<KeptFact>> list)
    {
        _kept = new()
        {
            [ReadingSubject.Sample] = list(FactSubject.Sample).GetEnumerator(),
            [ReadingSubject.Control] = list(FactSubject.Control).GetEnumerator(),
            [ReadingSubject.FryBatch] = list(FactSubject.FryBatch).GetEnumerator(),
        };
        foreach (var (subject, facts) in _kept)
        {
            _more[subject] = facts.MoveNext();
        }
    }

    /// <summary>The first stored fact that no line of the file gives; null while there is none.</summary>
    public KeptFact? Wrong { get; private set; }

    public int Matched { get; private set; }

    public void Take(in ParsedReading reading)
    {
        if (reading.Line != _line)
        {
            CompareLine();
            _line = reading.Line;
        }

        _ofLine.Add((reading.Subject, reading.Quantity.Id, reading.Value, reading.RawValue.ToString()));
    }

    /// <summary>Compares what is left; facts stored beyond the last line are wrong too.</summary>
    public void Complete()
    {
        CompareLine();
        foreach (var (subject, facts) in _kept)
        {
            Wrong ??= _more[subject] ? facts.Current : null;
        }
    }

    public void Dispose()
    {
        foreach (var facts in _kept.Values)
        {
            facts.Dispose();
        }
    }

    private void CompareLine()
    {
        foreach (var (subject, facts) in _kept)
        {
            while (_more[subject] && facts.Current.Line <= _line)
            {
                var fact = facts.Current;
                if (fact.Line == _line && _ofLine.Contains((subject, fact.QuantityId, fact.Value, fact.RawValue)))
                {
                    Matched++;
                }
                else
                {
                    Wrong ??= fact;
                }

                _more[subject] = facts.MoveNext();
            }
        }

        _ofLine.Clear();
    }
}
