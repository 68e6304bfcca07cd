using System.Data;
using System.Data.Common;
using System.Diagnostics.CodeAnalysis;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>One use of a statement of <see cref="SqliteStatements"/>: gathers text and parameters, and runs them on a command that may be prepared already.</summary>
internal sealed class SqliteStatementCommand(SqliteStatements statements) : DbCommand
{
    // Only its collection is used.
    private readonly SqliteCommand _given = new();
    private SqliteCommand? _running;

    [AllowNull]
    public override string CommandText { get; set; } = "";

    public override int CommandTimeout { get; set; } = 30;

    public override CommandType CommandType { get; set; } = CommandType.Text;

    public override bool DesignTimeVisible { get; set; }

    public override UpdateRowSource UpdatedRowSource { get; set; }

    protected override DbConnection? DbConnection
    {
        get => statements;
        set => throw new NotSupportedException();
    }

    protected override DbParameterCollection DbParameterCollection => _given.Parameters;

    protected override DbTransaction? DbTransaction { get; set; }

    public override void Cancel()
    {
    }

    public override void Prepare()
    {
    }

    public override int ExecuteNonQuery() => Running().ExecuteNonQuery();

    public override object? ExecuteScalar() => Running().ExecuteScalar();

    protected override DbDataReader ExecuteDbDataReader(CommandBehavior behavior) => Running().ExecuteReader(behavior);

    protected override DbParameter CreateDbParameter() => new SqliteParameter();

    protected override void Dispose(bool disposing)
    {
        if (disposing && _running is not null)
        {
            statements.GiveBack(_running);
            _running = null;
        }

        base.Dispose(disposing);
    }

    private SqliteCommand Running()
    {
        _running ??= statements.Take(CommandText, DbTransaction);
        _running.CommandTimeout = CommandTimeout;
        _running.Parameters.Clear();
        foreach (SqliteParameter parameter in _given.Parameters)
        {
            // Without its mark the driver would try one mark after the other for each.
            parameter.ParameterName = statements.Marked(parameter.ParameterName);
            _running.Parameters.Add(parameter);
        }

        return _running;
    }
}
