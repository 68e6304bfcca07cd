using System.Data.Common;
using Dapper;

namespace LabPipeline.Warehouse;

/// <summary>A connection, with its transaction when it may write; stores run their statements through it and never commit.</summary>
/// <param name="dialect">Which of the two texts of a statement to run.</param>
/// <param name="connection">The open connection.</param>
/// <param name="statements">The same connection, or one over it that keeps statements prepared.</param>
/// <param name="transaction">The transaction, when the session may write.</param>
/// <param name="cancellationToken">Ends statements early.</param>
public sealed class WarehouseSession(
    DialectName dialect, DbConnection connection, DbConnection statements, DbTransaction? transaction, CancellationToken cancellationToken)
{
    public DialectName Dialect => dialect;

    public DbConnection Connection => connection;

    public DbTransaction? Transaction => transaction;

    public CancellationToken CancellationToken => cancellationToken;

    public Task<int> ExecuteAsync(SqlText text, object? parameters = null) => statements.ExecuteAsync(Command(text, parameters));

    public Task<T?> ScalarAsync<T>(SqlText text, object? parameters = null) => statements.ExecuteScalarAsync<T>(Command(text, parameters));

    public Task<T?> FirstOrDefaultAsync<T>(SqlText text, object? parameters = null) => statements.QueryFirstOrDefaultAsync<T>(Command(text, parameters));

    public async Task<IReadOnlyList<T>> QueryAsync<T>(SqlText text, object? parameters = null) =>
        (await statements.QueryAsync<T>(Command(text, parameters)).ConfigureAwait(false)).AsList();

    /// <summary>At once, for callers that cannot wait for a task.</summary>
    public T? Scalar<T>(SqlText text, object? parameters = null) => statements.ExecuteScalar<T>(text.For(dialect), parameters, transaction);

    private CommandDefinition Command(SqlText text, object? parameters) =>
        new(text.For(dialect), parameters, transaction, cancellationToken: cancellationToken);
}
