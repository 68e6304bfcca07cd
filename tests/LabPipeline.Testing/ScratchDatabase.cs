using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Dapper;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Testing;

/// <summary>A SQL Server database for one test; emptied and used again by the next, since making one takes seconds.</summary>
internal sealed partial class ScratchDatabase : IScratchStore
{
    private static readonly ConcurrentBag<string> Free = [];

    // Children before their parents, which are made first. Quantities are what a migrated warehouse has from its start.
    private static readonly Lazy<string> Empty = new(() => string.Join('\n', Migrator.ScriptsOf(DialectName.SqlServer)
        .SelectMany(script => MadeTable().Matches(script.Text))
        .Select(match => match.Groups["name"].Value)
        .Where(name => name != "quantity")
        .Reverse()
        .Select(name => $"delete from {name};")));

    // Databases made side by side only slow each other down.
    private static readonly SemaphoreSlim OneAtATime = new(1, 1);

    private readonly string _connectionString;

    private ScratchDatabase(string connectionString)
    {
        _connectionString = connectionString;
        Dialect = new SqlServerDialect(connectionString);
    }

    public IWarehouseDialect Dialect { get; }

    public static async Task<ScratchDatabase> TakeAsync() => new(Free.TryTake(out var connectionString) ? connectionString : await MakeAsync());

    public async ValueTask DisposeAsync()
    {
        await using var connection = new SqlConnection(_connectionString);
        await connection.ExecuteAsync(Empty.Value);
        using var warehouse = new LabWarehouse(Dialect, TimeProvider.System);
        if (await new Migrator(warehouse, TimeProvider.System).IsNewestAsync(CancellationToken.None))
        {
            Free.Add(_connectionString);
        }
    }

    private static async Task<string> MakeAsync()
    {
        await OneAtATime.WaitAsync();
        try
        {
            var connectionString = await SqlServerForTests.CreateDatabaseAsync();
            using var warehouse = new LabWarehouse(new SqlServerDialect(connectionString), TimeProvider.System);
            await new Migrator(warehouse, TimeProvider.System).MigrateAsync(CancellationToken.None);
            return connectionString;
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    [GeneratedRegex(@"^create table (?<name>\w+)", RegexOptions.Multiline)]
    private static partial Regex MadeTable();
}
