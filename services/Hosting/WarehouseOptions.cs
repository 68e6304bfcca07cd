namespace LabPipeline.Hosting;

/// <summary>Which database holds the warehouse; part of the section <c>Lab</c>.</summary>
public sealed class WarehouseOptions
{
    /// <summary><c>sqlite</c>, a file in the data folder, or <c>sqlserver</c>. Default <c>sqlite</c>.</summary>
    public string Warehouse { get; set; } = "sqlite";

    /// <summary>Where SQL Server is. Not used with SQLite.</summary>
    public SqlServerOptions SqlServer { get; set; } = new();

    public bool UsesSqlServer => Warehouse.Equals("sqlserver", StringComparison.OrdinalIgnoreCase);

    public bool UsesSqlite => Warehouse.Equals("sqlite", StringComparison.OrdinalIgnoreCase);
}
