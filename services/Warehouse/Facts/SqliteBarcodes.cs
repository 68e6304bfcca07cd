using SQLitePCL;

namespace LabPipeline.Warehouse.Facts;

/// <summary>The distinct barcodes of one file: in memory while they are few, beyond that in a temporary table, so that no file decides how much memory there must be.</summary>
internal sealed class SqliteBarcodes(sqlite3 database)
{
    /// <summary>So many are held in memory.</summary>
    public const int MostHeld = 4 * 1024;

    private const string Table = "temp.file_barcode";

    private readonly HashSet<string> _held = new(StringComparer.Ordinal);
    private string? _last;
    private bool _spilled;

    public void Clear()
    {
        _held.Clear();
        (_last, _spilled) = (null, false);
    }

    public void Add(string barcode)
    {
        // Readers hand out the same string for the same barcode, most often for many rows on end.
        if (ReferenceEquals(barcode, _last))
        {
            return;
        }

        _last = barcode;
        if (_held.Add(barcode) && _held.Count == MostHeld)
        {
            Spill();
        }
    }

    /// <summary>What was added, valid until it is cleared.</summary>
    public FileBarcodes Take()
    {
        if (!_spilled)
        {
            List<string> rising = [.. _held];
            rising.Sort(StringComparer.Ordinal);
            return new FileBarcodes(rising.Count, rising);
        }

        Spill();
        using var count = new SqliteStatement(database, $"select count(*) from {Table}");
        count.Step();
        return new FileBarcodes(raw.sqlite3_column_int(count.Handle, 0), Spilled());
    }

    private IEnumerable<string> Spilled()
    {
        using var list = new SqliteStatement(database, $"select barcode from {Table} order by barcode");
        while (list.Step())
        {
            yield return raw.sqlite3_column_text(list.Handle, 0).utf8_to_string();
        }
    }

    private void Spill()
    {
        if (!_spilled)
        {
            // Of an earlier file, unless that was taken back and the table with it.
            Run("pragma temp.cache_size = -512");
            Run($"create table if not exists {Table} (barcode text not null primary key) without rowid");
            Run($"delete from {Table}");
            _spilled = true;
        }

        using var insert = new SqliteStatement(database, $"insert or ignore into {Table} values (?1)");
        foreach (var barcode in _held)
        {
            raw.sqlite3_bind_text(insert.Handle, 1, barcode);
            insert.Step();
            insert.Reset();
        }

        _held.Clear();
    }

    private void Run(string sql)
    {
        using var statement = new SqliteStatement(database, sql);
        statement.Step();
    }
}
