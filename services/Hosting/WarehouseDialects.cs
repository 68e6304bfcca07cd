using LabPipeline.Warehouse.Dialects;

namespace LabPipeline.Hosting;

/// <summary>The database that valid settings ask for.</summary>
public static class WarehouseDialects
{
    public static IWarehouseDialect Create(LabOptions lab, WarehouseOptions options)
    {
        ArgumentNullException.ThrowIfNull(lab);
        ArgumentNullException.ThrowIfNull(options);
        return options.UsesSqlServer
            ? new SqlServerDialect(SqlServerConnection.Read(options.SqlServer, out var faults) ?? throw new InvalidOperationException(string.Join(' ', faults)))
            : new SqliteDialect(lab.WarehouseFile);
    }
}
