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
    private readonly SqliteTextBinder _insertTexts;

    public SqliteFactStatements(SqliteConnection connection, FactTable table, int fileId)
    {
        _database = connection.Handle ?? throw new InvalidOperationException("The connection is closed.");
        _table = table;
        _fileId = fileId;
        var places = string.Join(", ", Enumerable.Repeat("?", table.Columns.Count));
        _insert = Prepare($"insert or ignore into {table.Name} ({string.Join(", ", table.Columns)}) values ({places})");
        _insertTexts = new SqliteTextBinder(_insert, table.Columns.Count);
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
        raw.sqlite3_bind_int64(_insert, at++, run);
        _insertTexts.Bind(at++, fact.RowKey);
        raw.sqlite3_bind_int(_insert, at++, fact.QuantityId);
        at = BindSubject(fact, at);
        _insertTexts.Bind(at++, fact.RawValue);
        _insertTexts.Bind(at++, fact.RawUnit);
        if (_table.Subject == FactSubject.Sample)
        {
            _insertTexts.Bind(at++, fact.Extract);
        }

        if (_table.Subject != FactSubject.FryBatch)
        {
            BindNumber(at++, fact.Replicate);
        }

        if (_table.Subject == FactSubject.Sample)
        {
            BindNumber(at++, fact.Tuber);
            BindNumber(at++, fact.Slice);
        }

        _insertTexts.Bind(at++, fact.Operator);
        _insertTexts.BindInstant(at++, fact.MeasuredAt);
        _insertTexts.Bind(at++, fact.MeasuredAs);
        raw.sqlite3_bind_int(_insert, at++, _fileId);
        raw.sqlite3_bind_int(_insert, at++, fact.Line);
        raw.sqlite3_bind_int(_insert, at, (int)standing);
    }

    private int BindSubject(in NewFact fact, int at)
    {
        if (_table.Subject == FactSubject.Sample)
        {
            _insertTexts.Bind(at++, fact.Barcode!);
        }
        else if (_table.Subject == FactSubject.Control)
        {
            _insertTexts.Bind(at++, fact.Material!);
        }

        raw.sqlite3_bind_double(_insert, at++, (double)fact.Value);
        if (_table.Subject != FactSubject.FryBatch)
        {
            raw.sqlite3_bind_int(_insert, at++, fact.BelowLimit ? 1 : 0);
        }

        return at;
    }

    private void BindNumber(int at, int? number)
    {
        if (number is { } value)
        {
            raw.sqlite3_bind_int(_insert, at, value);
        }
        else
        {
            raw.sqlite3_bind_null(_insert, at);
        }
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
