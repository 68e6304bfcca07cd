using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Testing;

/// <summary>A migrated SQLite warehouse in a folder of its own, gone when disposed.</summary>
public sealed class ScratchWarehouse : IAsyncDisposable
{
    private readonly ScratchFolder _folder = new();

    private ScratchWarehouse(TimeProvider time)
    {
        Time = time;
        Warehouse = new LabWarehouse(new SqliteDialect(_folder.File("warehouse.db")), time);
    }

    public TimeProvider Time { get; }

    public LabWarehouse Warehouse { get; }

    public static async Task<ScratchWarehouse> CreateAsync(TimeProvider? time = null)
    {
        var scratch = new ScratchWarehouse(time ?? TimeProvider.System);
        await new Migrator(scratch.Warehouse, scratch.Time).MigrateAsync(CancellationToken.None);
        return scratch;
    }

    public ValueTask DisposeAsync()
    {
        Warehouse.Dispose();
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
