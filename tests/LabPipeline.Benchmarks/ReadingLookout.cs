using System.Diagnostics;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Benchmarks;

/// <summary>Asks the warehouse again and again, as an analyst on a connection of his own, which samples have new readings.</summary>
internal sealed class ReadingLookout(string warehouse)
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(10);

    private readonly Dictionary<string, long> _seen = new(StringComparer.Ordinal);

    /// <summary>By barcode, when its readings were first seen: up to 10 ms and one look later than they were there.</summary>
    public IReadOnlyDictionary<string, long> Seen => _seen;

    public async Task WatchAsync(CancellationToken cancellationToken)
    {
        using var connection = new SqliteConnection($"Data Source={warehouse};Mode=ReadOnly;Pooling=false");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "select reading_id, barcode from reading where reading_id > $last order by reading_id";
        var last = command.Parameters.AddWithValue("$last", 0L);
        while (!cancellationToken.IsCancellationRequested)
        {
            using (var rows = command.ExecuteReader())
            {
                while (rows.Read())
                {
                    last.Value = rows.GetInt64(0);
                    _seen.TryAdd(rows.GetString(1), Stopwatch.GetTimestamp());
                }
            }

            await Task.Delay(LookEvery, cancellationToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
