namespace LabPipeline.Warehouse.Facts;

/// <summary>Identifiers of instrument runs, each looked up or made once for a file.</summary>
internal sealed class InstrumentRuns(WarehouseSession session)
{
    private static readonly SqlText FindRun = SqlText.Load<InstrumentRuns>("find-instrument-run");
    private static readonly SqlText InsertRun = SqlText.Load<InstrumentRuns>("insert-instrument-run");

    private readonly Dictionary<(string Instrument, string Run), long> _known = [];
    private (string Instrument, string Run, long Id) _last = ("", "", 0);

    /// <summary>Forgets what was made: it may have been taken back.</summary>
    public void Clear()
    {
        _known.Clear();
        _last = ("", "", 0);
    }

    public long IdOf(string instrument, string run)
    {
        // Readers hand out the same strings for the same run.
        if (ReferenceEquals(_last.Run, run) && ReferenceEquals(_last.Instrument, instrument))
        {
            return _last.Id;
        }

        if (!_known.TryGetValue((instrument, run), out var id))
        {
            var key = new { instrument, run };
            // Most files bring a run of their own.
            id = session.Scalar<long?>(InsertRun, key) ?? session.Scalar<long>(FindRun, key);
            _known.Add((instrument, run), id);
        }

        _last = (instrument, run, id);
        return id;
    }
}
