using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The prepared statements that load one fact table: insert a batch unless keys are taken, list what went in, and ask whether this very value is known.</summary>
/// <remarks>They run on the connection of the session and so inside its transaction.</remarks>
internal sealed class SqliteFactStatements : IDisposable
{
    private readonly sqlite3 _database;
    private readonly FactTable _table;
    private readonly sqlite3_stmt _insert;
    private readonly sqlite3_stmt _list;
    private readonly sqlite3_stmt _compare;

    public SqliteFactStatements(sqlite3 database, FactTable table, int fileId)
    {
        _database = database;
        _table = table;
        var given = string.Join(", ", table.Columns.Prepend("reading_id").Where(SqliteFactModule.Columns.Contains));
        _insert = Prepare($"insert or ignore into {table.Name} ({given}, file_id, standing) select {given}, ?1, ?2 from {SqliteFactModule.TableName}");
        raw.sqlite3_bind_int(_insert, 1, fileId);
        _list = Prepare($"select reading_id from {table.Name} where reading_id between ?1 and ?2");
        var same = table.Subject == FactSubject.Sample ? " and barcode = ?5" : "";
        _compare = Prepare($"select 1 from {table.Name} where run_id = ?1 and row_key = ?2 and quantity_id = ?3 and standing in (0, 1, 3) and value = ?4{same}");
    }

    /// <summary>The identifier after the highest one given.</summary>
    public long NextId()
    {
        using var last = Prepare($"select max(reading_id) from {_table.Name}");
        Check(raw.sqlite3_step(last));
        return raw.sqlite3_column_int64(last, 0) + 1;
    }

    /// <summary>Inserts every open fact of the batch whose key is free.</summary>
    /// <returns>How many went in.</returns>
    public int Insert(SqliteFactBatch batch, Standing standing)
    {
        raw.sqlite3_reset(_insert);
        raw.sqlite3_bind_int(_insert, 2, (int)standing);
        Check(SqliteFactModule.Step(_insert, batch));
        return raw.sqlite3_changes(_database);
    }

    /// <summary>Marks the facts of the batch that went in.</summary>
    public void MarkInserted(SqliteFactBatch batch, Span<bool> inserted)
    {
        raw.sqlite3_reset(_list);
        raw.sqlite3_bind_int64(_list, 1, batch.FirstId);
        raw.sqlite3_bind_int64(_list, 2, batch.FirstId + batch.Count - 1);
        while (Check(raw.sqlite3_step(_list)) == raw.SQLITE_ROW)
        {
            inserted[(int)(raw.sqlite3_column_int64(_list, 0) - batch.FirstId)] = true;
        }

        raw.sqlite3_reset(_list);
    }

    /// <summary>Whether this value stands for its key already: in effect, contested, or set aside by a person.</summary>
    public bool IsKnown(long run, in NewFact fact)
    {
        raw.sqlite3_reset(_compare);
        raw.sqlite3_bind_int64(_compare, 1, run);
        if (SqliteRowKey.TryNumber(fact.RowKey, out var number))
        {
            raw.sqlite3_bind_int64(_compare, 2, number);
        }
        else
        {
            raw.sqlite3_bind_text(_compare, 2, fact.RowKey);
        }

        raw.sqlite3_bind_int(_compare, 3, fact.QuantityId);
        raw.sqlite3_bind_double(_compare, 4, (double)fact.Value);
        if (_table.Subject == FactSubject.Sample)
        {
            raw.sqlite3_bind_text(_compare, 5, fact.Barcode!);
        }

        var found = Check(raw.sqlite3_step(_compare)) == raw.SQLITE_ROW;
        raw.sqlite3_reset(_compare);
        return found;
    }

    public void Dispose()
    {
        raw.sqlite3_finalize(_insert);
        raw.sqlite3_finalize(_list);
        raw.sqlite3_finalize(_compare);
    }

    private int Check(int code) => code is raw.SQLITE_DONE or raw.SQLITE_ROW
        ? code
        : throw new SqliteException($"SQLite error {code}: {raw.sqlite3_errmsg(_database).utf8_to_string()}", code);

    private sqlite3_stmt Prepare(string sql)
    {
        var code = raw.sqlite3_prepare_v2(_database, sql, out var statement);
        return code == raw.SQLITE_OK
            ? statement
            : throw new SqliteException($"SQLite error {code}: {raw.sqlite3_errmsg(_database).utf8_to_string()}", code);
    }
}
