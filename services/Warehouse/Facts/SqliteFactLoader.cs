using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Row-by-row load through statements prepared once and bound by position; several rows a statement measured slower.</summary>
internal sealed class SqliteFactLoader(WarehouseSession session, int fileId) : IFactLoader
{
    private readonly SqliteConnection _connection = (SqliteConnection)session.Connection;
    private readonly InstrumentRuns _runs = new(session);
    private readonly SqliteFactStatements?[] _statements = new SqliteFactStatements?[3];
    private int _new;
    private int _repeated;
    private int _conflicting;
    private long? _firstReading;
    private long? _lastReading;

    public void Add(in NewFact fact)
    {
        var run = _runs.IdOf(fact.Instrument, fact.Run);
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
}
