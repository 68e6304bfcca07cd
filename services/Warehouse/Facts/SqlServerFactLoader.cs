namespace LabPipeline.Warehouse.Facts;

/// <summary>Set-based load: the facts of a file are collected and judged against the warehouse by one statement a table.</summary>
internal sealed class SqlServerFactLoader(WarehouseSession session) : IFactLoader
{
    private readonly InstrumentRuns _runs = new(session);
    private readonly SqlServerFactBatch?[] _batches = new SqlServerFactBatch?[SqlServerFactText.All.Count];
    private int _fileId;
    private int _added;
    private (long? First, long? Last) _readings;

    public void Begin(int fileId)
    {
        Dispose();
        Array.Clear(_batches);
        _runs.Clear();
        (_fileId, _added, _readings) = (fileId, 0, default);
    }

    public void Add(in NewFact fact)
    {
        var run = _runs.IdOf(fact.Instrument, fact.Run);
        var batch = _batches[(int)fact.Subject] ??= new SqlServerFactBatch(session, fact.Subject, _fileId);
        batch.Add(new StagedFact(_added++, run, fact.Kept()));
    }

    public async Task<FactCounts> CompleteAsync()
    {
        var (stored, conflicting) = (0, 0);
        foreach (var subject in Enum.GetValues<FactSubject>())
        {
            var counts = _batches[(int)subject] is { } batch ? await batch.StoreAsync().ConfigureAwait(false) : [];
            stored += counts.Where(count => count.Standing == (int)Standing.InEffect).Sum(count => count.Facts);
            conflicting += counts.Where(count => count.Standing == (int)Standing.Contested).Sum(count => count.Facts);
            if (subject == FactSubject.Sample && counts.Count > 0)
            {
                _readings = (counts.Min(count => count.FirstId), counts.Max(count => count.LastId));
            }
        }

        return new FactCounts(stored, _added - stored - conflicting, conflicting, _readings.First, _readings.Last);
    }

    public async Task<FileBarcodes> ListBarcodesAsync()
    {
        var barcodes = await ListAsync(FileLedgerStore.ListBarcodesAsync).ConfigureAwait(false);
        return new FileBarcodes(barcodes.Count, barcodes);
    }

    public async Task<UnplannedBarcodes> ListUnplannedAsync() =>
        UnplannedBarcodes.Of(await ListAsync(FileLedgerStore.ListUnplannedAsync).ConfigureAwait(false));

    public void Dispose()
    {
        foreach (var batch in _batches)
        {
            batch?.Dispose();
        }
    }

    private async Task<IReadOnlyList<string>> ListAsync(Func<WarehouseSession, int, long, long, Task<IReadOnlyList<string>>> list) =>
        _readings is { First: { } first, Last: { } last } ? await list(session, _fileId, first, last).ConfigureAwait(false) : [];
}
