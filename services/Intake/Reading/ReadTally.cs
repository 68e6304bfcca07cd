using LabPipeline.Intake.Profiles;

namespace LabPipeline.Intake.Reading;

/// <summary>Hands good rows on, counts everything, and sums it up.</summary>
internal sealed class ReadTally(Profile profile, ReadLimits limits, FaultLog faults, IReadingSink sink)
{
    private readonly List<ParkedRow> _parked = [];
    private readonly long[] _taken = new long[Enum.GetValues<ReadingSubject>().Length];
    private long _parkedCount;

    public long Rows { get; private set; }

    public MissingTexts Missing { get; } = new(profile);

    public SortedSet<string> IgnoredColumns { get; } = new(StringComparer.Ordinal);

    public void Take(ReadOnlySpan<ParsedReading> readings)
    {
        Rows++;

        // Once a fault refuses the file its remaining rows are only checked, so that all faults are known.
        if (faults.Count > 0)
        {
            return;
        }

        foreach (ref readonly var reading in readings)
        {
            _taken[(int)reading.Subject]++;
            sink.Take(in reading);
        }
    }

    public void Refuse(int line, Fault fault)
    {
        Rows++;
        if (profile.BadRows == BadRows.RefuseFile)
        {
            faults.Add(fault);
            return;
        }

        _parkedCount++;
        if (_parked.Count < limits.MaxParkedRows)
        {
            _parked.Add(new ParkedRow(line, fault));
        }
    }

    public ReadOutcome Outcome(string fileName, bool incomplete) => new(
        fileName,
        incomplete ? ReadState.Held : faults.Count > 0 ? ReadState.Refused : ReadState.Complete,
        Rows,
        _taken[(int)ReadingSubject.Sample],
        _taken[(int)ReadingSubject.Control],
        _taken[(int)ReadingSubject.FryBatch],
        Missing.Counted(),
        _parkedCount,
        _parked,
        faults.Count,
        faults.Kept,
        [.. IgnoredColumns]);
}
