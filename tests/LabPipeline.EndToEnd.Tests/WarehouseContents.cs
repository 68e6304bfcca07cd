using Dapper;
using Microsoft.Data.Sqlite;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>What two warehouses must have in common to be equal: everything but identifiers given on arrival, times of the clock, and what follows from them.</summary>
internal static class WarehouseContents
{
    private static readonly Dictionary<string, string> Tables = new()
    {
        ["readings"] = """
            select u.instrument || ' ' || u.run || ' ' || r.row_key || ' ' || r.quantity_id || ' ' || r.barcode || ' ' || r.value || ' ' || r.below_limit
                   || ' ' || r.raw_value || ' ' || r.raw_unit || ' ' || ifnull(r.extract, '') || ' ' || ifnull(r.replicate, '') || ' ' || ifnull(r.tuber, '')
                   || ' ' || ifnull(r.slice, '') || ' ' || ifnull(r.measured_at, '') || ' ' || f.sha256 || ' ' || r.line || ' ' || r.standing
            from reading r join instrument_run u on u.run_id = r.run_id join source_file f on f.file_id = r.file_id
            """,
        ["control checks"] = """
            select u.instrument || ' ' || u.run || ' ' || c.row_key || ' ' || c.quantity_id || ' ' || c.material || ' ' || c.value || ' ' || c.standing
            from control_check c join instrument_run u on u.run_id = c.run_id
            """,
        ["fry batches"] = """
            select u.instrument || ' ' || u.run || ' ' || b.row_key || ' ' || b.quantity_id || ' ' || b.value || ' ' || b.standing
            from fry_batch b join instrument_run u on u.run_id = b.run_id
            """,
        ["results"] = "select barcode || ' ' || quantity_id || ' ' || value || ' ' || below_limit || ' ' || n || ' ' || ifnull(s, '') || ' ' || basis || ' ' || in_doubt from sample_result",
        ["doubts"] = """
            select u.instrument || ' ' || u.run || ' ' || r.row_key || ' ' || r.quantity_id || ' ' || d.cause
            from reading_doubt d join reading r on r.reading_id = d.reading_id join instrument_run u on u.run_id = r.run_id
            """,
        ["season grid"] = "select barcode || ' ' || quantity_id || ' ' || state || ' ' || readings || ' ' || reason from measurement_state",
        ["control limits"] = "select instrument || ' ' || material || ' ' || quantity_id || ' ' || version || ' ' || lower || ' ' || upper from control_limit",
        ["bench orders"] = "select trial_code || ' ' || pull_no || ' ' || kind || ' ' || draw_no || ' ' || position || ' ' || barcode from bench_place",
        ["alerts"] = "select fingerprint || ' ' || level || ' ' || state || ' ' || times_raised || ' ' || headline from qc_alert where rule_name <> 'delivery failing'",
        ["arrivals"] = "select a.folder || ' ' || a.name || ' ' || a.again || ' ' || a.put_away || ' ' || f.state from arrival a join source_file f on f.file_id = a.file_id",
        ["held files"] = "select folder || ' ' || name || ' ' || reason from held_file",
        ["deliveries"] = "select a.fingerprint || ' ' || d.times_raised || ' ' || d.event || ' ' || d.channel || ' ' || d.state from delivery d join qc_alert a on a.alert_id = d.alert_id where a.rule_name <> 'delivery failing'",
        ["files in the archive"] = "select sha256 || ' ' || bytes || ' ' || state from source_file",
    };

    public static async Task<IReadOnlyDictionary<string, IReadOnlyList<string>>> ReadAsync(string dataFolder)
    {
        await using var connection = new SqliteConnection($"Data Source={Path.Combine(dataFolder, "warehouse.db")};Mode=ReadOnly;Pooling=false");
        var contents = new Dictionary<string, IReadOnlyList<string>>();
        foreach (var (table, sql) in Tables)
        {
            contents.Add(table, [.. (await connection.QueryAsync<string>(sql)).Order(StringComparer.Ordinal)]);
        }

        return contents;
    }
}
