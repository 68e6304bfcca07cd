using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The two prepared statements that load one fact table: insert unless the key is taken, and ask whether this very value is known.</summary>
/// <remarks>
/// Bound by position through the driver's own library: the ADO.NET layer costs a third of the time here. They run on the
/// connection of the session and so inside its transaction.
/// </remarks>
internal sealed class SqliteFactStatements : IDisposable
{
    private readonly sqlite3 _database;
    private readonly FactTable _table;
    private readonly int _fileId;
    private readonly sqlite3_stmt _insert;
    private readonly sqlite3_stmt _compare;
    private readonly SqlitePlaces _places;

    public SqliteFactStatements(SqliteConnection connection, FactTable table, int fileId)
    {
        _database = connection.Handle ?? throw new InvalidOperationException("The connection is closed.");
        _table = table;
        _fileId = fileId;
        var places = string.Join(", ", Enumerable.Repeat("?", table.Columns.Count));
        _insert = Prepare($"insert or ignore into {table.Name} ({string.Join(", ", table.Columns)}) values ({places})");
        _places = new SqlitePlaces(_insert, table.Columns.Count);
        var same = table.Subject == FactSubject.Sample ? " and barcode = ?5" : "";
        _compare = Prepare($"select 1 from {table.Name} where run_id = ?1 and row_key = ?2 and quantity_id = ?3 and standing in (0, 1, 3) and value = ?4{same}");
    }

    public long LastId => raw.sqlite3_last_insert_rowid(_database);

    /// <returns>False when a fact with this key is in effect or was set aside by a person.</returns>
    public bool Insert(long run, in NewFact fact, Standing standing)
    {
        raw.sqlite3_reset(_insert);
        Bind(run, fact, standing);
        Step(_insert);
        return raw.sqlite3_changes(_database) > 0;
    }

    public bool IsKnown(long run, in NewFact fact)
    {
        raw.sqlite3_reset(_compare);
        raw.sqlite3_bind_int64(_compare, 1, run);
        raw.sqlite3_bind_text(_compare, 2, fact.RowKey);
        raw.sqlite3_bind_int(_compare, 3, fact.QuantityId);
        raw.sqlite3_bind_double(_compare, 4, (double)fact.Value);
        if (_table.Subject == FactSubject.Sample)
        {
            raw.sqlite3_bind_text(_compare, 5, fact.Barcode!);
        }

        var found = Step(_compare) == raw.SQLITE_ROW;
        raw.sqlite3_reset(_compare);
        return found;
    }

    public void Dispose()
    {
        raw.sqlite3_finalize(_insert);
        raw.sqlite3_finalize(_compare);
    }

    private void Bind(long run, in NewFact fact, Standing standing)
    {
        var at = 1;
        _places.Bind(at++, run);
        _places.Bind(at++, fact.RowKey);
        _places.Bind(at++, fact.QuantityId);
        at = BindSubject(fact, at);
        _places.Bind(at++, fact.RawValue);
        _places.Bind(at++, fact.RawUnit);
        if (_table.Subject == FactSubject.Sample)
        {
            _places.Bind(at++, fact.Extract);
        }

        if (_table.Subject != FactSubject.FryBatch)
        {
            _places.Bind(at++, fact.Replicate);
        }

        if (_table.Subject == FactSubject.Sample)
        {
            _places.Bind(at++, fact.Tuber);
            _places.Bind(at++, fact.Slice);
        }

        _places.Bind(at++, fact.Operator);
        _places.BindInstant(at++, fact.MeasuredAt);
        _places.Bind(at++, fact.MeasuredAs);
        _places.Bind(at++, _fileId);
        _places.Bind(at++, fact.Line);
        _places.Bind(at, (int)standing);
    }

    private int BindSubject(in NewFact fact, int at)
    {
        if (_table.Subject == FactSubject.Sample)
        {
            _places.Bind(at++, fact.Barcode!);
        }
        else if (_table.Subject == FactSubject.Control)
        {
            _places.Bind(at++, fact.Material!);
        }

        raw.sqlite3_bind_double(_insert, at++, (double)fact.Value);
        if (_table.Subject != FactSubject.FryBatch)
        {
            _places.Bind(at++, fact.BelowLimit ? 1 : 0);
        }

        return at;
    }

    private int Step(sqlite3_stmt statement)
    {
        var code = raw.sqlite3_step(statement);
        return code is raw.SQLITE_DONE or raw.SQLITE_ROW
            ? code
            : throw new SqliteException($"SQLite error {code}: {raw.sqlite3_errmsg(_database).utf8_to_string()}", code);
    }

    private sqlite3_stmt Prepare(string sql)
    {
        var code = raw.sqlite3_prepare_v2(_database, sql, out var statement);
        return code == raw.SQLITE_OK
            ? statement
            : throw new SqliteException($"SQLite error {code}: {raw.sqlite3_errmsg(_database).utf8_to_string()}", code);
    }
}
