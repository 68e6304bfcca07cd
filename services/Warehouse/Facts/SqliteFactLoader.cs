using Dapper;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Row-by-row load through statements prepared once and bound by position; several rows a statement measured slower.</summary>
internal sealed class SqliteFactLoader(WarehouseSession session, int fileId) : IFactLoader
{
    private static readonly SqlText FindRun = SqlText.Load<SqliteFactLoader>("find-instrument-run");
    private static readonly SqlText InsertRun = SqlText.Load<SqliteFactLoader>("insert-instrument-run");

    private readonly SqliteConnection _connection = (SqliteConnection)session.Connection;
    private readonly Dictionary<(string Instrument, string Run), long> _runs = [];
    private readonly SqliteFactStatements?[] _statements = new SqliteFactStatements?[3];
    private (string Instrument, string Run, long Id) _lastRun = ("", "", 0);
    private int _new;
    private int _repeated;
    private int _conflicting;
    private long? _firstReading;
    private long? _lastReading;

    public void Add(in NewFact fact)
    {
        var run = RunOf(fact.Instrument, fact.Run);
        var statements = _statements[(int)fact.Subject] ??= new SqliteFactStatements(_connection, FactTable.Of(fact.Subject), fileId);
        if (statements.Insert(run, fact, Standing.InEffect))
        {
            _new++;
            Note(fact, statements);
        }
        else if (statements.IsKnown(run, fact))
        {
            _repeated++;
        }
        else
        {
            statements.Insert(run, fact, Standing.Contested);
            _conflicting++;
            Note(fact, statements);
        }
    }

    public Task<FactCounts> CompleteAsync() =>
        Task.FromResult(new FactCounts(_new, _repeated, _conflicting, _firstReading, _lastReading));

    public void Dispose()
    {
        foreach (var statements in _statements)
        {
            statements?.Dispose();
        }
    }

    private void Note(in NewFact fact, SqliteFactStatements statements)
    {
        if (fact.Subject == FactSubject.Sample)
        {
            _lastReading = statements.LastId;
            _firstReading ??= _lastReading;
        }
    }

    private long RunOf(string instrument, string run)
    {
        if (ReferenceEquals(_lastRun.Run, run) && ReferenceEquals(_lastRun.Instrument, instrument))
        {
            return _lastRun.Id;
        }

        if (!_runs.TryGetValue((instrument, run), out var id))
        {
            var key = new { instrument, run };
            id = _connection.QueryFirstOrDefault<long?>(FindRun.For(DialectName.Sqlite), key, session.Transaction)
                ?? _connection.ExecuteScalar<long>(InsertRun.For(DialectName.Sqlite), key, session.Transaction);
            _runs.Add((instrument, run), id);
        }

        _lastRun = (instrument, run, id);
        return id;
    }
}
