using LabPipeline.Warehouse.Dialects;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Testing;

/// <summary>A SQLite file in a folder of its own.</summary>
internal sealed class ScratchFile : IScratchStore
{
    private readonly ScratchFolder _folder = new();

    public ScratchFile() => Dialect = new SqliteDialect(_folder.File("warehouse.db"));

    public IWarehouseDialect Dialect { get; }

    public ValueTask DisposeAsync()
    {
        SqliteConnection.ClearAllPools();
        _folder.Dispose();
        return ValueTask.CompletedTask;
    }
}
