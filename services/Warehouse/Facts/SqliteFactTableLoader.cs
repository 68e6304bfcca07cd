using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Loads the facts of one file after another into one table, a batch at a time.</summary>
internal sealed class SqliteFactTableLoader : IDisposable
{
    private readonly SqliteFactStatements _statements;
    private readonly SqliteFactBatch _batch = new();
    private readonly bool[] _inserted = new bool[SqliteFactBatch.Size];
    private readonly SqliteBarcodes _barcodes;

    public SqliteFactTableLoader(sqlite3 database, FactTable table)
    {
        Subject = table.Subject;
        _statements = new SqliteFactStatements(database, table);
        _barcodes = new SqliteBarcodes(database);
    }

    public FactSubject Subject { get; }

    /// <summary>Whether the file has facts of this table.</summary>
    public bool IsOpen { get; private set; }

    public int New { get; private set; }

    public int Repeated { get; private set; }

    public int Conflicting { get; private set; }

    public long? FirstId { get; private set; }

    public long? LastId { get; private set; }

    /// <summary>Begins the file, unless it has begun.</summary>
    public void Open(int fileId)
    {
        if (IsOpen)
        {
            return;
        }

        IsOpen = true;
        _statements.Begin(fileId);
        _batch.Begin(_statements.NextId());
        (New, Repeated, Conflicting, FirstId, LastId) = (0, 0, 0, null, null);
        _barcodes.Clear();
    }

    public void Close() => IsOpen = false;

    public void Add(long run, in NewFact fact)
    {
        _batch.Add(run, fact);
        if (_batch.Count == SqliteFactBatch.Size)
        {
            Flush();
        }
    }

    /// <summary>Stores what was added and not yet stored.</summary>
    public void Flush()
    {
        if (_batch.Count == 0)
        {
            return;
        }

        _batch.OpenAll();
        var inserted = _statements.Insert(_batch, Standing.InEffect);
        New += inserted;
        var all = inserted == _batch.Count;
        _inserted.AsSpan().Fill(all);
        if (!all)
        {
            _statements.MarkInserted(_batch, _inserted);
        }

        for (var row = 0; row < _batch.Count; row++)
        {
            if (_inserted[row] || Contests(row))
            {
                Note(row);
            }
        }

        _batch.Clear();
    }

    /// <summary>Barcodes of the facts that went in, new or contested.</summary>
    public FileBarcodes TakeBarcodes() => _barcodes.Take();

    public void Dispose() => _statements.Dispose();

    /// <summary>The key of the fact is taken: the same value counts once, another one is kept as contested, once.</summary>
    private bool Contests(int row)
    {
        if (_statements.IsKnown(_batch[row].Run, _batch[row].Fact))
        {
            Repeated++;
            return false;
        }

        _batch.OpenOnly(row);
        Conflicting += _statements.Insert(_batch, Standing.Contested);
        return true;
    }

    private void Note(int row)
    {
        LastId = _batch.FirstId + row;
        FirstId ??= LastId;
        if (_batch[row].Fact.Barcode is { } barcode)
        {
            _barcodes.Add(barcode);
        }
    }
}
