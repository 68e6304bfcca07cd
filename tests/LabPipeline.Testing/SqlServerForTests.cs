using System.Collections.Concurrent;
using Dapper;
using DotNet.Testcontainers.Builders;
using Microsoft.Data.SqlClient;
using Testcontainers.MsSql;

namespace LabPipeline.Testing;

/// <summary>The SQL Server of a test run: the one LABPIPELINE_TEST_SQLSERVER names, or one in a container where a Docker engine answers.</summary>
/// <remarks>Every run makes databases of its own and drops them at its end (<see cref="SqlServerCleanUp"/>).</remarks>
public static class SqlServerForTests
{
    public const string Variable = "LABPIPELINE_TEST_SQLSERVER";

    private const string Image = "mcr.microsoft.com/mssql/server:2022-latest";

    private static readonly Lazy<Task<(string? Connection, string Missing)>> Server = new(FindAsync);
    private static readonly ConcurrentBag<string> Made = [];
    private static readonly ConcurrentBag<string> Logins = [];
    private static readonly string RunName = "labpipeline_test_" + Guid.NewGuid().ToString("N")[..12];
    private static MsSqlContainer? _container;

    /// <summary>Makes an empty database.</summary>
    /// <returns>The way to it.</returns>
    /// <exception cref="SkippedException">There is no server, and this run does not require one.</exception>
    public static async Task<string> CreateDatabaseAsync()
    {
        var (server, missing) = await Server.Value;
        if (server is null)
        {
            throw new SkippedException(Requirement.Waive(Requirement.SqlServer, missing));
        }

        var name = $"{RunName}_{Made.Count + 1}_{Guid.NewGuid().ToString("N")[..4]}";
        await RunAsync(server, $"create database {name}");
        Made.Add(name);
        return new SqlConnectionStringBuilder(server) { InitialCatalog = name }.ToString();
    }

    /// <summary>Makes a login that may do in one database what <paramref name="role"/> may.</summary>
    /// <param name="connectionString">The way to the database as its owner.</param>
    /// <param name="role">A role of the warehouse, which exists already.</param>
    /// <returns>The way to the same database under the new login.</returns>
    public static async Task<string> CreateLoginAsync(string connectionString, string role)
    {
        var name = $"{RunName}_{role}_{Guid.NewGuid().ToString("N")[..4]}";
        var password = $"Aa1!{Guid.NewGuid():N}";
        await RunAsync(connectionString, $"create login {name} with password = N'{password}'");
        Logins.Add(name);
        await RunAsync(connectionString, $"create user {name} for login {name}");
        await RunAsync(connectionString, $"alter role {role} add member {name}");
        return new SqlConnectionStringBuilder(connectionString) { UserID = name, Password = password }.ToString();
    }

    internal static async Task DropAllAsync()
    {
        SqlConnection.ClearAllPools();
        while (Made.TryTake(out var name))
        {
            await RunAsync((await Server.Value).Connection!, $"drop database {name}");
        }

        while (Logins.TryTake(out var login))
        {
            await RunAsync((await Server.Value).Connection!, $"drop login {login}");
        }

        if (_container is not null)
        {
            await _container.DisposeAsync();
        }
    }

    private static async Task<(string? Connection, string Missing)> FindAsync()
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given)
        {
            return (given, "");
        }

        try
        {
            _container = new MsSqlBuilder(Image).Build();
            await _container.StartAsync();
            return (_container.GetConnectionString(), "");
        }
        catch (DockerUnavailableException)
        {
            return (null, $"{Variable} is not set and no Docker engine answers");
        }
    }

    private static async Task RunAsync(string server, string statement)
    {
        await using var connection = new SqlConnection(server);
        await connection.ExecuteAsync(statement);
    }
}
