using System.Collections.Frozen;
using Microsoft.Data.SqlClient;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>Which failures may pass when the whole transaction runs again.</summary>
internal static class SqlServerFailure
{
    // From this severity on the server has closed the connection.
    private const byte ConnectionIsLost = 20;

    private static readonly FrozenSet<int> Passing = new[]
    {
        -2, // the client waited longer than the command's time limit
        -1, 0, 20, 64, 121, 233, 258, 10053, 10054, 10060, 10061, // no connection, or it broke: network and handshake
        1205, // chosen as deadlock victim
        1222, // lock not granted in time
        3960, // a snapshot's row was changed by another transaction
        2601, 2627, // unique index, unique constraint: another writer was first, and running again finds its row
        701, 802, 8645, 8651, // memory is short
        4060, 921, 922, // the database is starting or recovering
        596, 6005, 17142, // the session was ended, the server is stopping or paused
    }.ToFrozenSet();

    public static bool MayPass(SqlException failure) =>
        failure.Class >= ConnectionIsLost || failure.Errors.Cast<SqlError>().Any(error => Passing.Contains(error.Number));
}
