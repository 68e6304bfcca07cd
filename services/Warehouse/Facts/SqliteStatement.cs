using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>A statement prepared once and bound by position through the driver's own library, on the connection of the session and so inside its transaction.</summary>
internal sealed class SqliteStatement : IDisposable
{
    private readonly sqlite3 _database;

    public SqliteStatement(sqlite3 database, string sql)
    {
        _database = database;
        Check(raw.sqlite3_prepare_v2(database, sql, out var statement));
        Handle = statement;
    }

    public sqlite3_stmt Handle { get; }

    /// <returns>Whether there is a row.</returns>
    public bool Step() => Check(raw.sqlite3_step(Handle)) == raw.SQLITE_ROW;

    /// <summary>Runs the statement to its end over the open facts of <paramref name="batch"/>.</summary>
    /// <returns>How many rows it changed.</returns>
    public int StepOver(SqliteFactBatch batch)
    {
        Check(SqliteFactModule.Step(Handle, batch));
        return raw.sqlite3_changes(_database);
    }

    public void Reset() => raw.sqlite3_reset(Handle);

    public void Dispose() => raw.sqlite3_finalize(Handle);

    private int Check(int code) => code is raw.SQLITE_OK or raw.SQLITE_DONE or raw.SQLITE_ROW
        ? code
        : throw new SqliteException($"SQLite error {code}: {raw.sqlite3_errmsg(_database).utf8_to_string()}", code);
}
