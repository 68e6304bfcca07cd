using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Shows SQLite the facts of a batch as the rows of a table, so that one statement inserts them all.</summary>
/// <remarks>
/// A statement a row costs twice as much here: SQLite opens table and indexes anew for each, and every column is one more call into it.
/// A module has no state; a statement runs on the thread that steps it, and reads the batch set there.
/// </remarks>
internal static unsafe class SqliteFactModule
{
    public const string TableName = "fact_batch";

    private static readonly nint* Table = Describe();

    [ThreadStatic]
    private static SqliteFactBatch? _batch;

    [ThreadStatic]
    private static int _row;

    /// <summary>The columns the table has, by their numbers in it.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "reading_id", "run_id", "row_key", "quantity_id", "barcode", "material", "value", "below_limit", "raw_value", "raw_unit", "extract",
        "replicate", "tuber", "slice", "operator", "measured_at", "measured_as", "line",
    ];

    public static void Register(sqlite3 database)
    {
        var code = SqliteNative.CreateModule(database.DangerousGetHandle(), TableName, Table, 0);
        if (code != raw.SQLITE_OK)
        {
            throw new SqliteException($"SQLite error {code}: the table {TableName} was not taken.", code);
        }
    }

    /// <summary>Runs <paramref name="insert"/> over the open facts of <paramref name="batch"/>.</summary>
    public static int Step(sqlite3_stmt insert, SqliteFactBatch batch)
    {
        _batch = batch;
        try
        {
            return raw.sqlite3_step(insert);
        }
        finally
        {
            _batch = null;
        }
    }

    /// <summary>SQLite's list of what a table can do: the version, then its functions in the order of <c>struct sqlite3_module</c>.</summary>
    private static nint* Describe()
    {
        const int Entries = 20;
        var module = (nint*)NativeMemory.AllocZeroed(Entries, (nuint)sizeof(nint));
        module[0] = 1;
        module[2] = (nint)(delegate* unmanaged[Cdecl]<nint, nint, int, nint, nint*, nint, int>)&Connect;
        module[3] = (nint)(delegate* unmanaged[Cdecl]<nint, nint, int>)&ChoosePlan;
        module[4] = (nint)(delegate* unmanaged[Cdecl]<nint, int>)&Release;
        module[5] = module[4];
        module[6] = (nint)(delegate* unmanaged[Cdecl]<nint, nint*, int>)&Open;
        module[7] = module[4];
        module[8] = (nint)(delegate* unmanaged[Cdecl]<nint, int, nint, int, nint, int>)&First;
        module[9] = (nint)(delegate* unmanaged[Cdecl]<nint, int>)&Next;
        module[10] = (nint)(delegate* unmanaged[Cdecl]<nint, int>)&AtEnd;
        module[11] = (nint)(delegate* unmanaged[Cdecl]<nint, nint, int, int>)&Column;
        module[12] = (nint)(delegate* unmanaged[Cdecl]<nint, long*, int>)&RowId;
        return module;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Connect(nint database, nint state, int count, nint texts, nint* table, nint error)
    {
        const int TableFields = 3;
        *table = (nint)NativeMemory.AllocZeroed(TableFields, (nuint)sizeof(nint));
        return SqliteNative.DeclareTable(database, $"create table given ({string.Join(", ", Columns)})");
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int ChoosePlan(nint table, nint plan) => raw.SQLITE_OK;

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Release(nint allocated)
    {
        NativeMemory.Free((void*)allocated);
        return raw.SQLITE_OK;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Open(nint table, nint* cursor)
    {
        *cursor = (nint)NativeMemory.AllocZeroed(1, (nuint)sizeof(nint));
        return raw.SQLITE_OK;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int First(nint cursor, int plan, nint planText, int count, nint values)
    {
        if (_batch is null)
        {
            return raw.SQLITE_MISUSE;
        }

        _row = _batch.Open.Start.Value;
        return raw.SQLITE_OK;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Next(nint cursor)
    {
        _row++;
        return raw.SQLITE_OK;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int AtEnd(nint cursor) => _row >= _batch!.Open.End.Value ? 1 : 0;

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int Column(nint cursor, nint context, int column)
    {
        _batch!.Give(context, _row, column);
        return raw.SQLITE_OK;
    }

    [UnmanagedCallersOnly(CallConvs = [typeof(CallConvCdecl)])]
    private static int RowId(nint cursor, long* id)
    {
        *id = _row;
        return raw.SQLITE_OK;
    }
}
