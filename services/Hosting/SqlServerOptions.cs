namespace LabPipeline.Hosting;

/// <summary>How to reach the warehouse in SQL Server; section <c>Lab:SqlServer</c>.</summary>
public sealed class SqlServerOptions
{
    /// <summary>The connection string. Better kept in a file or in the environment (<c>Lab__SqlServer__ConnectionString</c>) than in appsettings.</summary>
    public string ConnectionString { get; set; } = "";

    /// <summary>A file whose only content is the connection string, for its owner alone to read.</summary>
    public string ConnectionStringFile { get; set; } = "";

    /// <summary>How long one command may take. Default 30 s; at least 1. Bulk loads have a limit of their own.</summary>
    public int CommandTimeoutSeconds { get; set; } = 30;
}
