using System.Data;
using System.Data.Common;
using System.Diagnostics.CodeAnalysis;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>A SQLite connection as Dapper sees it inside one transaction: a statement asked for again is not parsed and planned again.</summary>
/// <remarks>The driver keeps a statement only with its command object, and Dapper makes a new one each time. The connection itself is another's to close.</remarks>
internal sealed class SqliteStatements(SqliteConnection connection) : DbConnection
{
    private const int MostKept = 100;

    private readonly Dictionary<string, SqliteCommand> _idle = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _marked = new(StringComparer.Ordinal);

    [AllowNull]
    public override string ConnectionString
    {
        get => connection.ConnectionString;
        set => throw new NotSupportedException();
    }

    public override string Database => connection.Database;

    public override string DataSource => connection.DataSource;

    public override string ServerVersion => connection.ServerVersion;

    public override ConnectionState State => connection.State;

    public override void ChangeDatabase(string databaseName) => throw new NotSupportedException();

    public override void Close() => throw new NotSupportedException();

    public override void Open() => throw new NotSupportedException();

    /// <summary>A command with this text, prepared already if it was used before.</summary>
    internal SqliteCommand Take(string text, DbTransaction? transaction) => _idle.Remove(text, out var kept)
        ? kept
        : new SqliteCommand(text, connection, (SqliteTransaction?)transaction);

    internal void GiveBack(SqliteCommand command)
    {
        if (_idle.Count >= MostKept || !_idle.TryAdd(command.CommandText, command))
        {
            command.Dispose();
        }
    }

    /// <summary>A parameter's name as statements write it.</summary>
    internal string Marked(string name)
    {
        if (name.StartsWith('@'))
        {
            return name;
        }

        if (!_marked.TryGetValue(name, out var marked))
        {
            marked = "@" + name;
            _marked.Add(name, marked);
        }

        return marked;
    }

    protected override DbTransaction BeginDbTransaction(IsolationLevel isolationLevel) => throw new NotSupportedException();

    protected override DbCommand CreateDbCommand() => new SqliteStatementCommand(this);

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            foreach (var command in _idle.Values)
            {
                command.Dispose();
            }

            _idle.Clear();
        }

        base.Dispose(disposing);
    }
}
