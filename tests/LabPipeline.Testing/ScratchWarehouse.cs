using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;

namespace LabPipeline.Testing;

/// <summary>An empty migrated warehouse of one test, gone when disposed.</summary>
public sealed class ScratchWarehouse : IAsyncDisposable
{
    private readonly IScratchStore _store;

    private ScratchWarehouse(IScratchStore store, TimeProvider time)
    {
        _store = store;
        Time = time;
        Warehouse = new LabWarehouse(store.Dialect, time);
    }

    public TimeProvider Time { get; }

    public LabWarehouse Warehouse { get; }

    /// <summary>On SQLite, in a folder of its own.</summary>
    public static Task<ScratchWarehouse> CreateAsync(TimeProvider? time = null) => CreateAsync(DialectName.Sqlite, time);

    /// <summary>On the database named; a test that needs SQL Server where none is given is skipped and says why.</summary>
    public static async Task<ScratchWarehouse> CreateAsync(DialectName dialect, TimeProvider? time = null)
    {
        IScratchStore store = dialect == DialectName.Sqlite ? new ScratchFile() : await ScratchDatabase.TakeAsync();
        var scratch = new ScratchWarehouse(store, time ?? TimeProvider.System);
        await new Migrator(scratch.Warehouse, scratch.Time).MigrateAsync(CancellationToken.None);
        return scratch;
    }

    public async ValueTask DisposeAsync()
    {
        Warehouse.Dispose();
        await _store.DisposeAsync();
    }
}
