using System.Data.Common;
using Dapper;

namespace LabPipeline.Warehouse;

/// <summary>A connection, with its transaction when it may write; stores run their statements through it and never commit.</summary>
public sealed class WarehouseSession(DialectName dialect, DbConnection connection, DbTransaction? transaction, CancellationToken cancellationToken)
{
    public DialectName Dialect => dialect;

    public DbConnection Connection => connection;

    public DbTransaction? Transaction => transaction;

    public CancellationToken CancellationToken => cancellationToken;

    public Task<int> ExecuteAsync(SqlText text, object? parameters = null) => connection.ExecuteAsync(Command(text, parameters));

    public Task<T?> ScalarAsync<T>(SqlText text, object? parameters = null) => connection.ExecuteScalarAsync<T>(Command(text, parameters));

    public Task<T?> FirstOrDefaultAsync<T>(SqlText text, object? parameters = null) => connection.QueryFirstOrDefaultAsync<T>(Command(text, parameters));

    public async Task<IReadOnlyList<T>> QueryAsync<T>(SqlText text, object? parameters = null) =>
        (await connection.QueryAsync<T>(Command(text, parameters)).ConfigureAwait(false)).AsList();

    private CommandDefinition Command(SqlText text, object? parameters) =>
        new(text.For(dialect), parameters, transaction, cancellationToken: cancellationToken);
}
