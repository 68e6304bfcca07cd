using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The two prepared statements that load one fact table: insert a batch unless keys are taken, and ask whether this very value is known.</summary>
/// <remarks>They run on the connection of the session and so inside its transaction.</remarks>
internal sealed class SqliteFactStatements : IDisposable
{
    private readonly sqlite3 _database;
    private readonly FactTable _table;
    private readonly sqlite3_stmt _insert;
    private readonly sqlite3_stmt _compare;

    public SqliteFactStatements(SqliteConnection connection, FactTable table, int fileId)
    {
        _database = connection.Handle ?? throw new InvalidOperationException("The connection is closed.");
        _table = table;
        var given = table.Columns.Where(SqliteFactModule.Columns.Contains).ToList();
        _insert = Prepare(
            $"insert or ignore into {table.Name} ({string.Join(", ", given)}, file_id, standing) select {string.Join(", ", given)}, ?1, ?2 from {SqliteFactModule.TableName}");
        raw.sqlite3_bind_int(_insert, 1, fileId);
        var same = table.Subject == FactSubject.Sample ? " and barcode = ?5" : "";
        _compare = Prepare($"select 1 from {table.Name} where run_id = ?1 and row_key = ?2 and quantity_id = ?3 and standing in (0, 1, 3) and value = ?4{same}");
    }

    /// <summary>Inserts every fact whose key is free; the batch knows which.</summary>
    /// <returns>How many went in.</returns>
    public int Insert(SqliteFactBatch batch, Standing standing)
    {
        raw.sqlite3_reset(_insert);
        raw.sqlite3_bind_int(_insert, 2, (int)standing);
        batch.Begin();
        Check(SqliteFactModule.Step(_insert, batch));
        return raw.sqlite3_changes(_database);
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
