using Dapper;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Tests.Doubles;

/// <summary>An alert as the quality service would have written it; the laboratory and its samples are invented.</summary>
internal sealed record AlertRow(int Id)
{
    private const string Insert =
        """
        insert into qc_alert (alert_id, fingerprint, rule_name, level, scope, trial_code, pull_no, barcode, headline, advice, facts, state,
                              times_raised, opened_at, changed_at)
        values (@Id, @Fingerprint, @Rule, @Level, @Barcode, '26K', 2, @Barcode, @Headline, @Advice, @Facts, 'open', @TimesRaised, @At, @At)
        """;

    public string Level { get; init; } = "hold";

    public string Rule { get; init; } = "duplicate-disagreement";

    public string Barcode { get; init; } = "26K70012C";

    public int TimesRaised { get; init; } = 1;

    public string Headline { get; init; } = "Sample 26K70012C: duplicate glucose disagrees, 0.061 against 0.034 mg/g, limit 0.012";

    public string Advice { get; init; } = "Run two more extracts of this sample; keep all four results.";

    public string Facts { get; init; } = """{"first": 0.061, "second": 0.034, "limit": 0.012, "unit": "mg/g"}""";

    /// <summary>Writes it under the number the test chose, which SQL Server has to be told.</summary>
    public static Task AddAsync(WarehouseSession session, AlertRow alert, DateTimeOffset at) => session.Connection.ExecuteAsync(
        session.Dialect == DialectName.Sqlite ? Insert : $"set identity_insert qc_alert on; {Insert}; set identity_insert qc_alert off;",
        alert.Columns(at),
        session.Transaction);

    private object Columns(DateTimeOffset at) => new
    {
        Id,
        Fingerprint = $"{Rule}|{Barcode}|{Id}",
        Rule,
        Level,
        Barcode,
        Headline,
        Advice,
        Facts,
        TimesRaised,
        At = at,
    };
}
