using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Asks for barcode after barcode whether a plan holds it: a large file has tens of thousands, too many for one statement's parameters.</summary>
internal sealed class SqlitePlanLookup : IDisposable
{
    private readonly SqliteStatement _find;

    public SqlitePlanLookup(sqlite3 database) => _find = new SqliteStatement(database, "select 1 from sample where barcode = ?1");

    public bool Holds(string barcode)
    {
        raw.sqlite3_bind_text(_find.Handle, 1, barcode);
        var found = _find.Step();
        _find.Reset();
        return found;
    }

    public void Dispose() => _find.Dispose();
}
