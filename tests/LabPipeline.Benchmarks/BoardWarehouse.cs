using System.Globalization;
using Microsoft.Data.Sqlite;

namespace LabPipeline.Benchmarks;

/// <summary>Fills a demonstration's warehouse with ten seasons of past trials, so that its pages are asked of a large one.</summary>
/// <remarks>A hundred trials of 48 plots and 10 pulls; files, runs, results, alerts, messages and changes grow with them. Written by plain statements, in key order.</remarks>
internal static class BoardWarehouse
{
    private const int Trials = 100;
    private const int PlotsPerTrial = 48;
    private const int PullsPerTrial = 10;
    private const int ReadingsPerFile = 500;
    private const int Samples = Trials * PlotsPerTrial * PullsPerTrial;

    private const string Plans =
        """
        create temp table past as with recursive n(i) as (select 0 union all select i + 1 from n where i < @trials - 1) select i, 'PAST-' || printf('%03d', i) as code, 2015 + i / 10 as season from n;
        insert into trial select code, 'Past trial ' || i, 'Which keeps?', season, 'P' || i, 'Field 1', 'rcbd', 'clone', null, null, season || '-09-10', 'America/Chicago',
                                 'C-1', 5, 2, 2, 'dry_matter_von_scheele_1937', 55, 3, 'past', season || '-10-01T00:00:00.000Z' from past;
        insert into bay select code, 'B1', 9 from past;
        create temp table plots as with recursive n(i) as (select 0 union all select i + 1 from n where i < @plots - 1) select i, printf('%03d', 101 + i) as code from n;
        insert into plot select t.code, p.code, '1', null, 'C-' || (p.i % 4), 'nitrogen ' || (p.i % 3 * 80), 'B1' from past t cross join plots p;
        create temp table pulls as with recursive n(i) as (select 1 union all select i + 1 from n where i < @pulls) select i from n;
        insert into pull select t.code, l.i, date(t.season || '-09-10', (l.i * 21) || ' days'), date(t.season || '-09-10', (l.i * 21) || ' days'), date(t.season || '-09-10', (l.i * 21 + 4) || ' days')
        from past t cross join pulls l;
        create temp table wanted as select row_number() over (order by quantity_id) - 1 as i, quantity_id from (select distinct quantity_id from reading);
        create temp table computed as select distinct quantity_id from sample_result;
        insert into expected_measurement select t.code, l.i, w.quantity_id, 1 from past t cross join pulls l cross join wanted w;
        create temp table samples as select row_number() over (order by t.i, l.i, p.i) - 1 as i, t.code as trial, p.code as plot, l.i as pull from past t cross join pulls l cross join plots p;
        create unique index temp.ix_samples on samples (i);
        insert into sample select 'X' || printf('%08d', i) || 'Z', trial, plot, pull, i from samples;
        insert into sample_result select 'X' || printf('%08d', s.i) || 'Z', c.quantity_id, 0.1 + (s.i % 97) * 0.001, 0, 2, 0.001, 'two extracts', '[1,2]', '2024-01-01T00:00:00.000Z', 0 from samples s cross join computed c;
        insert into measurement_state select 'X' || printf('%08d', s.i) || 'Z', w.quantity_id, 'done', 1, '' from samples s cross join wanted w;
        """;

    private const string Files =
        """
        create temp table files as with recursive n(i) as (select 1 union all select i + 1 from n where i < @files) select i + 1000000 as i from n;
        insert into source_file (file_id, sha256, kind, name, bytes, archived_as, taken_at, state, row_count, new_count, repeated_count, conflicting_count, parked_count)
        select i, 'past' || i, 'sugar', 'past-' || i || '.csv', 40000, 'x', '2024-01-01T00:00:00.000Z', 'stored', @perFile, @perFile, 0, 0, 0 from files;
        insert into arrival select i, i, 'sugar', 'past-' || i || '.csv', '2024-01-01T00:00:00.000Z', '2024-01-01T00:00:00.000Z', 0, 1 from files;
        insert into instrument_run select i, 'past analyser ' || (i % 4), 'P' || i from files;
        insert into control_check select f.i * 10 + k.i, f.i, 'c' || k.i, (select min(quantity_id) from wanted), 'PAST-CTRL', 0.05, 0, '0.05', 'g/L', null, null,
            strftime('%Y-%m-%dT%H:%M:%S.000Z', '2015-01-01', ((f.i - 1000000) * 3) || ' hours'), null, f.i, k.i, 0
        from files f cross join (select i from pulls where i <= 5) k;
        insert into outbox (message_id, type, body, created_at, published_at) select 'past-' || i, 'past', '{}', '2024-01-01T00:00:00.000Z', '2024-01-01T00:00:01.000Z' from files;
        insert into inbox select 'past-' || i, 'past', '2024-01-01T00:00:02.000Z' from files;
        insert into change_log (at, who, what, subject, why) select '2024-01-01T00:00:00.000Z', 'somebody', 'alert settled', 'alert:' || i, 'looked into' from files;
        insert into qc_alert (alert_id, fingerprint, rule_name, level, scope, trial_code, pull_no, barcode, headline, advice, facts, state, times_raised, opened_at, changed_at)
        select i, 'past-' || i, 'duplicate disagreement', 'hold', 'past-' || i, 'PAST-000', 1, null, 'Extracts differed.', 'Extract once more.', '{}', case when i % 40 = 0 then 'open' else 'settled' end, 1,
               '2024-01-01T00:00:00.000Z', '2024-01-01T00:00:00.000Z' from files where i % 2 = 0;
        insert into delivery (alert_id, times_raised, event, channel, urgency, state, attempts, due_at, next_attempt_at, created_at, delivered_at)
        select alert_id, 1, 'raised', 'alert-file', 1, 'delivered', 1, opened_at, opened_at, opened_at, opened_at from qc_alert where fingerprint like 'past-%';
        """;

    private const string Readings =
        """
        with recursive n(i) as (select 0 union all select i + 1 from n where i < @readings - 1)
        insert into reading
        select 100000000 + n.i, 1000001 + n.i / @perFile, printf('%08d', n.i), w.quantity_id, 'X' || printf('%08d', n.i / @perSample) || 'Z', 0.05 + (n.i % 997) * 0.0001, 0, '0.05', 'g/L',
               case when n.i % 2 = 0 then 'A' else 'B' end, 1 + n.i % 3, null, null, 'JR', '2024-01-01T00:00:00.000Z', null, 1000001 + n.i / @perFile, n.i % @perFile, 0
        from n join wanted w on w.i = n.i % (select count(*) from wanted)
        """;

    /// <returns>How many readings the warehouse holds then.</returns>
    public static long Fill(string path, int readings)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=false");
        connection.Open();
        using var transaction = connection.BeginTransaction();
        var files = readings / ReadingsPerFile;
        Run(connection, Plans, ("@trials", Trials), ("@plots", PlotsPerTrial), ("@pulls", PullsPerTrial));
        Run(connection, Files, ("@files", files), ("@perFile", ReadingsPerFile));
        Run(connection, Readings, ("@readings", files * ReadingsPerFile), ("@perFile", ReadingsPerFile), ("@perSample", Math.Max(1, readings / Samples)));
        transaction.Commit();
        Run(connection, "pragma wal_checkpoint(truncate)");
        return Convert.ToInt64(Scalar(connection, "select count(*) from reading"), CultureInfo.InvariantCulture);
    }

    /// <summary>Samples of the demonstration that have readings.</summary>
    public static IReadOnlyList<string> MeasuredSamples(string path)
    {
        using var connection = new SqliteConnection($"Data Source={path};Mode=ReadOnly;Pooling=false");
        connection.Open();
        return ((string)Scalar(connection, "select string_agg(barcode, ' ') from (select distinct r.barcode from sample_result r join sample s on s.barcode = r.barcode)")!).Split(' ');
    }

    private static object? Scalar(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    private static void Run(SqliteConnection connection, string sql, params (string Name, object Value)[] parameters)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.CommandTimeout = 0;
        foreach (var (name, value) in parameters)
        {
            command.Parameters.AddWithValue(name, value);
        }

        command.ExecuteNonQuery();
    }
}
