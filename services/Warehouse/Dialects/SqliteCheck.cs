using System.Data.Common;
using Dapper;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Dialects;

/// <summary>Looks for damage in a SQLite file, and copies one beside its writers.</summary>
internal static class SqliteCheck
{
    private const string Sound = "ok";

    public static async Task<IReadOnlyList<string>> RunAsync(DbConnection connection) =>
        [.. (await connection.QueryAsync<string>("pragma integrity_check(20)").ConfigureAwait(false)).Where(line => line != Sound).Select(line => "The warehouse file is damaged: " + line)];

    /// <summary>The online backup of SQLite: copying the file itself could tear it. The copy gets its name when it is checked and on the disk.</summary>
    public static async Task CopyAsync(SqliteConnection source, string path)
    {
        var draft = path + ".draft";
        File.Delete(draft);
        var target = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = draft, Pooling = false }.ToString());
        await using (target.ConfigureAwait(false))
        {
            await target.OpenAsync().ConfigureAwait(false);
            source.BackupDatabase(target);

            // One file without a log beside it, so that it can be carried away.
            await target.ExecuteAsync("pragma journal_mode = delete").ConfigureAwait(false);
            var faults = await RunAsync(target).ConfigureAwait(false);
            if (faults.Count > 0)
            {
                throw new InvalidDataException($"The copy is not sound and was not kept: {faults[0]}");
            }
        }

        using (var file = new FileStream(draft, FileMode.Open, FileAccess.ReadWrite))
        {
            file.Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: true);
    }
}
