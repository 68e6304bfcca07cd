namespace LabPipeline.Testing;

/// <summary>Drops the databases of a test run. Test assemblies that use SQL Server name it as their fixture.</summary>
public sealed class SqlServerCleanUp : IAsyncDisposable
{
    public async ValueTask DisposeAsync() => await SqlServerForTests.DropAllAsync();
}
