using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The statements that load one fact table: insert a batch unless keys are taken, list what went in, and ask whether this very value is known.</summary>
internal sealed class SqliteFactStatements : IDisposable
{
    private readonly FactTable _table;
    private readonly SqliteStatement _last;
    private readonly SqliteStatement _insert;
    private readonly SqliteStatement _list;
    private readonly SqliteStatement _compare;

    public SqliteFactStatements(sqlite3 database, FactTable table)
    {
        _table = table;
        _last = new SqliteStatement(database, $"select max(reading_id) from {table.Name}");
        var given = string.Join(", ", table.Columns.Prepend("reading_id").Where(SqliteFactModule.Columns.Contains));
        _insert = new SqliteStatement(database, $"insert or ignore into {table.Name} ({given}, file_id, standing) select {given}, ?1, ?2 from {SqliteFactModule.TableName}");
        _list = new SqliteStatement(database, $"select reading_id from {table.Name} where reading_id between ?1 and ?2");
        var same = table.Subject == FactSubject.Sample ? " and barcode = ?5" : "";
        _compare = new SqliteStatement(
            database, $"select 1 from {table.Name} where run_id = ?1 and row_key = ?2 and quantity_id = ?3 and standing in (0, 1, 3) and value = ?4{same}");
    }

    /// <summary>The identifier after the highest one given.</summary>
    public long NextId()
    {
        _last.Step();
        var last = raw.sqlite3_column_int64(_last.Handle, 0);
        _last.Reset();
        return last + 1;
    }

    /// <summary>Says which file the facts to come are of.</summary>
    public void Begin(int fileId)
    {
        _insert.Reset();
        raw.sqlite3_bind_int(_insert.Handle, 1, fileId);
    }

    /// <summary>Inserts every open fact of the batch whose key is free.</summary>
    /// <returns>How many went in.</returns>
    public int Insert(SqliteFactBatch batch, Standing standing)
    {
        _insert.Reset();
        raw.sqlite3_bind_int(_insert.Handle, 2, (int)standing);
        return _insert.StepOver(batch);
    }

    /// <summary>Marks the facts of the batch that went in.</summary>
    public void MarkInserted(SqliteFactBatch batch, Span<bool> inserted)
    {
        raw.sqlite3_bind_int64(_list.Handle, 1, batch.FirstId);
        raw.sqlite3_bind_int64(_list.Handle, 2, batch.FirstId + batch.Count - 1);
        while (_list.Step())
        {
            inserted[(int)(raw.sqlite3_column_int64(_list.Handle, 0) - batch.FirstId)] = true;
        }

        _list.Reset();
    }

    /// <summary>Whether this value stands for its key already: in effect, contested, or set aside by a person.</summary>
    public bool IsKnown(long run, in NewFact fact)
    {
        var compare = _compare.Handle;
        raw.sqlite3_bind_int64(compare, 1, run);
        if (SqliteRowKey.TryNumber(fact.RowKey.Span, out var number))
        {
            raw.sqlite3_bind_int64(compare, 2, number);
        }
        else
        {
            raw.sqlite3_bind_text(compare, 2, fact.RowKey.ToString());
        }

        raw.sqlite3_bind_int(compare, 3, fact.QuantityId);
        raw.sqlite3_bind_double(compare, 4, (double)fact.Value);
        if (_table.Subject == FactSubject.Sample)
        {
            raw.sqlite3_bind_text(compare, 5, fact.Barcode!);
        }

        var found = _compare.Step();
        _compare.Reset();
        return found;
    }

    public void Dispose()
    {
        _last.Dispose();
        _insert.Dispose();
        _list.Dispose();
        _compare.Dispose();
    }
}
