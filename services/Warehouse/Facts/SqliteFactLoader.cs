using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Loads by batches of rows that SQLite reads from this program's memory; see <see cref="SqliteFactModule"/>.</summary>
internal sealed class SqliteFactLoader(WarehouseSession session) : IFactLoader
{
    private readonly sqlite3 _database = Prepared(session);
    private readonly InstrumentRuns _runs = new(session);
    private readonly SqliteFactTableLoader?[] _tables = new SqliteFactTableLoader?[3];
    private SqlitePlanLookup? _plan;
    private FileBarcodes _barcodes = FileBarcodes.None;
    private int _fileId;

    public void Begin(int fileId)
    {
        _fileId = fileId;
        _runs.Clear();
        foreach (var table in _tables)
        {
            table?.Close();
        }
    }

    public void Add(in NewFact fact)
    {
        var run = _runs.IdOf(fact.Instrument, fact.Run);
        var table = _tables[(int)fact.Subject] ??= new SqliteFactTableLoader(_database, FactTable.Of(fact.Subject));
        table.Open(_fileId);
        table.Add(run, fact);
    }

    public Task<FactCounts> CompleteAsync()
    {
        var tables = _tables.OfType<SqliteFactTableLoader>().Where(table => table.IsOpen).ToList();
        foreach (var table in tables)
        {
            table.Flush();
        }

        var readings = tables.Find(table => table.Subject == FactSubject.Sample);
        _barcodes = readings?.TakeBarcodes() ?? FileBarcodes.None;
        return Task.FromResult(new FactCounts(
            tables.Sum(table => table.New),
            tables.Sum(table => table.Repeated),
            tables.Sum(table => table.Conflicting),
            readings?.FirstId,
            readings?.LastId));
    }

    public Task<FileBarcodes> ListBarcodesAsync() => Task.FromResult(_barcodes);

    public Task<UnplannedBarcodes> ListUnplannedAsync()
    {
        var plan = _plan ??= new SqlitePlanLookup(_database);
        return Task.FromResult(UnplannedBarcodes.Of(_barcodes.Rising.Where(barcode => !plan.Holds(barcode))));
    }

    public void Dispose()
    {
        _plan?.Dispose();
        foreach (var table in _tables)
        {
            table?.Dispose();
        }
    }

    private static sqlite3 Prepared(WarehouseSession session)
    {
        var database = ((SqliteConnection)session.Connection).Handle ?? throw new InvalidOperationException("The connection is closed.");
        SqliteFactModule.Register(database);
        return database;
    }
}
