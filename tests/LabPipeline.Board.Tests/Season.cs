using LabPipeline.Science.Barcodes;

namespace LabPipeline.Board.Tests;

/// <summary>A few rows of an invented season: one trial with a pull behind, a pull on the bench and a pull to come, two samples each.</summary>
internal static class Season
{
    /// <summary>Planned for the pull on the bench and measured.</summary>
    public static readonly string Measured = SampleBarcode.FromPayload("26NT0201").Text;

    /// <summary>Planned for the pull on the bench, not measured.</summary>
    public static readonly string Unmeasured = SampleBarcode.FromPayload("26NT0202").Text;

    /// <summary>A barcode with a good check character that no plan and no file holds.</summary>
    public static readonly string Unknown = SampleBarcode.FromPayload("26NT0999").Text;

    public static async Task FillAsync(RunningBoard board)
    {
        await board.InsertAsync(
            """
            insert into trial values ('NT26', 'Late nitrogen', 'Which keeps?', 2025, 'NT', 'Field 4', 'rcbd', 'clone', null, null, '2025-09-09', 'America/Chicago',
                                      'NT-104', 5, 2, 2, 'dry_matter_von_scheele_1937', 55, 3, 'abc', '2025-10-01T00:00:00.000Z');
            insert into bay values ('NT26', 'B1', 9);
            insert into plot values ('NT26', '101', '1', null, 'NT-127', 'nitrogen 200', 'B1'), ('NT26', '102', '1', null, '<b>NT</b>', 'nitrogen 0', 'B1');
            insert into pull values ('NT26', 1, '2025-11-03', '2025-11-03', '2025-11-07'), ('NT26', 2, '2026-01-12', '2026-01-12', '2026-01-14'),
                                    ('NT26', 3, '2026-03-02', '2026-03-02', '2026-03-06');
            insert into sample values ('P1A', 'NT26', '101', 1, 1), ('P1B', 'NT26', '102', 1, 2), (@Measured, 'NT26', '101', 2, 3), (@Unmeasured, 'NT26', '102', 2, 4),
                                      ('P3A', 'NT26', '101', 3, 5), ('P3B', 'NT26', '102', 3, 6);
            insert into expected_measurement values ('NT26', 1, 1, 2), ('NT26', 2, 1, 1), ('NT26', 3, 1, 2);
            """,
            new { Measured, Unmeasured });
        await AddFileAsync(board, 1, "stored", null);
        await board.InsertAsync(
            """
            insert into instrument_run values (1, 'analyser A', 'A1');
            insert into reading values (11, 1, 'a', 1, @Measured, 0.052, 0, '0,052', 'g/L', '1', 1, null, null, 'JR', '2026-01-14T13:05:00.000Z', null, 1, 14, 0),
                                       (12, 1, 'b', 1, @Measured, 0.005, 1, '< 0,005', 'g/L', '2', 1, null, null, 'JR', null, null, 1, 15, 1);
            insert into sample_result (barcode, quantity_id, value, below_limit, n, s, basis, from_readings, computed_at)
            values (@Measured, 60, 0.0625, 0, 1, null, 'one extract', '[11]', '2026-01-14T13:06:00.000Z');
            """,
            new { Measured });
    }

    public static Task AddFileAsync(RunningBoard board, int number, string state, string? reason) => board.InsertAsync(
        """
        insert into source_file (file_id, sha256, kind, name, bytes, archived_as, taken_at, state, reason, row_count, new_count, repeated_count, conflicting_count, parked_count)
        values (@number, @hash, 'sugar', @name, 10, 'x', @at, @state, @reason, 2, 2, 0, 0, 0);
        insert into arrival values (@number, @number, 'sugar', @name, @at, @at, 0, 1);
        """,
        new { number, hash = $"hash{number}", name = $"run-{number:000}.csv", at = $"2026-01-14T13:{number % 60:00}:00.000Z", state, reason });

    public static Task AddAlertAsync(RunningBoard board, int number, string level, string rule, string headline, string facts = "{}", string? barcode = null) =>
        board.InsertAsync(
            """
            insert into qc_alert (alert_id, fingerprint, rule_name, level, scope, trial_code, pull_no, barcode, headline, advice, facts, state, times_raised, opened_at, changed_at)
            values (@number, @number, @rule, @level, 'x', 'NT26', 2, @barcode, @headline, 'Extract once more.', @facts, 'open', 1, @at, @at)
            """,
            new { number, rule, level, barcode, headline, facts, at = $"2026-01-14T14:{number % 60:00}:00.000Z" });
}
