using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Loads the facts of one file into one table, a batch at a time.</summary>
internal sealed class SqliteFactTableLoader(SqliteConnection connection, FactTable table, int fileId) : IDisposable
{
    private readonly SqliteFactStatements _statements = new(connection, table, fileId);
    private readonly SqliteFactBatch _batch = new(connection.Handle!);
    private readonly HashSet<string> _barcodes = new(StringComparer.Ordinal);
    private string? _lastBarcode;

    public int New { get; private set; }

    public int Repeated { get; private set; }

    public int Conflicting { get; private set; }

    public long? FirstId { get; private set; }

    public long? LastId { get; private set; }

    /// <summary>Barcodes of the facts that went in, new or contested.</summary>
    public IReadOnlySet<string> Barcodes => _barcodes;

    public void Add(long run, in NewFact fact)
    {
        _batch.Add(run, fact);
        if (_batch.Count == SqliteFactBatch.Size)
        {
            Flush();
        }
    }

    public void Flush()
    {
        if (_batch.Count == 0)
        {
            return;
        }

        var inserted = _statements.Insert(_batch, Standing.InEffect);
        var count = _batch.Count;
        var found = 0;
        var taken = new List<int>();
        for (var row = 0; row < count; row++)
        {
            if (_batch.IdOf(row) is var id and not 0)
            {
                found++;
                Note(_batch[row].Fact, id);
            }
            else
            {
                taken.Add(row);
            }
        }

        if (found != inserted)
        {
            throw new InvalidOperationException($"SQLite says that {inserted} facts went in, and gave identifiers to {found}.");
        }

        New += inserted;
        SettleTaken(taken);
        _batch.Clear();
    }

    public void Dispose() => _statements.Dispose();

    /// <summary>One by one and in their order, so that a value that stands twice in a file is contested once.</summary>
    private void SettleTaken(List<int> rows)
    {
        foreach (var row in rows)
        {
            if (_statements.IsKnown(_batch[row].Run, _batch[row].Fact))
            {
                Repeated++;
                continue;
            }

            _batch.Narrow(row);
            _statements.Insert(_batch, Standing.Contested);
            Conflicting++;
            Note(_batch[0].Fact, _batch.IdOf(0));
        }
    }

    private void Note(in NewFact fact, long id)
    {
        FirstId ??= id;
        LastId = id;
        if (fact.Barcode is { } barcode && !ReferenceEquals(barcode, _lastBarcode))
        {
            _lastBarcode = barcode;
            _barcodes.Add(barcode);
        }
    }
}
