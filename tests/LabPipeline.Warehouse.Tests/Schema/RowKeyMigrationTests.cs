using Dapper;
using LabPipeline.Warehouse.Schema;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Warehouse.Tests.Schema;

/// <summary>A warehouse made before row keys were kept as numbers keeps every reading, and its keys go on counting once.</summary>
public sealed class RowKeyMigrationTests
{
    private const int RowKeys = 13;

    // Only the first three are numbers in their only way of writing.
    private static readonly string[] Keys = ["0", "7", "999999999999999999", "07", "1000000000000000000", "7|A", "-7", "7.0", " 7", "٧"];

    [Fact]
    public async Task Warehouse_WhenItHeldKeysAsTexts_ReadsThemBackAsTheyWereAndRefusesThemTwice()
    {
        await using var connection = new SqliteConnection("Data Source=:memory:");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        var scripts = Migrator.ScriptsOf(DialectName.Sqlite);
        foreach (var script in scripts.Where(script => script.Number < RowKeys))
        {
            await connection.ExecuteAsync(script.Text);
        }

        await FillAsync(connection);
        foreach (var script in scripts.Where(script => script.Number >= RowKeys))
        {
            await connection.ExecuteAsync(script.Text);
        }

        Assert.Equal(Keys, await connection.QueryAsync<string>("select row_key from v_reading order by reading_id"));
        Assert.Equal(["integer", "integer", "integer", .. Keys[3..].Select(_ => "text")], await connection.QueryAsync<string>("select typeof(row_key) from reading order by reading_id"));
        Assert.Throws<SqliteException>(() => connection.Execute("insert into reading select 99, run_id, 7, quantity_id, barcode, value, below_limit, raw_value, raw_unit, extract, replicate, tuber, slice, operator, measured_at, measured_as, file_id, line, standing from reading where reading_id = 1"));
    }

    private static async Task FillAsync(SqliteConnection connection)
    {
        await connection.ExecuteAsync(
            """
            insert into quantity (quantity_id, name, unit, description) values (1, 'glucose_in_extract', 'g/L', '');
            insert into instrument_run values (1, 'SUG-1', 'r1');
            insert into source_file (file_id, sha256, kind, name, bytes, archived_as, taken_at, state, row_count, new_count, repeated_count, conflicting_count, parked_count)
            values (1, 'a', 'sugar', 'a.csv', 1, 'a', '2026-01-14T00:00:00.000Z', 'stored', 1, 1, 0, 0, 0);
            """);
        for (var row = 0; row < Keys.Length; row++)
        {
            await connection.ExecuteAsync(
                """
                insert into reading (reading_id, run_id, row_key, quantity_id, barcode, value, below_limit, raw_value, raw_unit, file_id, line, standing)
                values (@id, 1, @key, 1, 'S26P01T03R2C', 0.05, 0, '0.05', 'g/L', 1, @id, 0)
                """,
                new { id = row + 1, key = Keys[row] });
        }
    }
}
