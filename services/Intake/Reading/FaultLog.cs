namespace LabPipeline.Intake.Reading;

/// <summary>Counts all faults and keeps the first.</summary>
internal sealed class FaultLog(int kept)
{
    private readonly List<Fault> _faults = [];

    public long Count { get; private set; }

    public IReadOnlyList<Fault> Kept => _faults;

    public void Add(Fault fault)
    {
        Count++;
        if (_faults.Count < kept)
        {
            _faults.Add(fault);
        }
    }
}
