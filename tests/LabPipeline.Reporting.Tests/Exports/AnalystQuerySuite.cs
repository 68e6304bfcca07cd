using System.Data.SqlTypes;
using System.Globalization;
using LabPipeline.Science.Quantities;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Reporting.Tests.Exports;

/// <summary>The ten worked queries on a small season whose answers are worked out by hand; only the trial's code is exchanged.</summary>
public abstract class AnalystQuerySuite(DialectName store) : IAsyncLifetime
{
    private ExportLab _lab = null!;

    public static TheoryData<int, string[]> Answers => new()
    {
        { 1, ["101|1|KT-101, early|none|0.3||50", "102|1|KT-102|none|0.45||49", "201|2|KT-101, early|none|||", "202|2|KT-102|none|||"] },
        { 2, ["KT-101, early|1|2|0.15|60.5", "KT-101, early|2|1|0.36|58", "KT-101, early|3|1|0.3|50", "KT-102|1|2|0.45|54.5", "KT-102|2|0||", "KT-102|3|1|0.45|49"] },
        { 3, ["102|KT-102|none|1", "202|KT-102|none|1", "101|KT-101, early|none|2"] },
        { 4, ["101|KT-101, early|2|-2", "101|KT-101, early|3|-8"] },
        { 5, ["1|2026-10-05|glucose_in_extract|2", "2|2026-11-02|glucose_in_extract|4", "3|2026-12-07|glucose_in_extract|4"] },
        { 6, ["{101}|A|1|0.052|g/L|0.052|g/L|readings|2|in effect", "{101}|B|1|0.050|g/L|0.05|g/L|readings|2|in effect"] },
        { 7, ["{102}|2|0.01|0.205", "{101}|2|0.002|0.051"] },
        { 8, ["colour meter 1|1|2|61", "colour meter 2|1|1|55"] },
        { 9, ["block|calibration|102|KT-102|no control before the run"] },
        { 10, ["fry 2|fryer 1|A. Person|2026-10-06 15:30|170|160|130"] },
    };

    public async ValueTask InitializeAsync()
    {
        _lab = await ExportLab.CreateAsync(store, withMiddlePull: true);
        (string Plot, int Pull, decimal Glucose, decimal L)[] results =
            [("101", 1, 0.10m, 60m), ("102", 1, 0.40m, 55m), ("201", 1, 0.20m, 61m), ("202", 1, 0.50m, 54m), ("101", 2, 0.36m, 58m), ("101", 3, 0.30m, 50m), ("102", 3, 0.45m, 49m)];
        foreach (var (plot, pull, glucose, lightness) in results)
        {
            await _lab.StoreResultsAsync(_lab.Barcode(plot, pull), (QuantityCatalogue.Glucose, glucose), (QuantityCatalogue.MeanHunterL, lightness));
        }

        await _lab.StoreReadingsAsync("readings",
        [
            ExportLab.Reading(_lab.Barcode("101", 1), "1", 0.052m, "0.052"),
            ExportLab.Reading(_lab.Barcode("101", 1), "2", 0.050m, "0.050") with { Extract = "B" },
            ExportLab.Reading(_lab.Barcode("102", 1), "3", 0.21m),
            ExportLab.Reading(_lab.Barcode("102", 1), "4", 0.20m) with { Extract = "B" },
            Chip("101", "5", "colour meter 1", 60m),
            Chip("101", "6", "colour meter 1", 62m),
            Chip("102", "7", "colour meter 2", 55m),
            .. Batch("fry 1", 180m, 170m, 130m),
            .. Batch("fry 2", 170m, 160m, 130m),
        ]);
        await _lab.StoreAlertAsync(new Alert
        {
            Fingerprint = "f",
            RuleName = "calibration",
            Level = AlertLevels.Block,
            Scope = "sample:" + _lab.Barcode("102", 1),
            TrialCode = ExportLab.TrialCode,
            PullNo = 1,
            Barcode = _lab.Barcode("102", 1),
            Headline = "no control before the run",
            Advice = "Measure it again.",
            Facts = "{}",
            State = AlertStates.Open,
            TimesRaised = 1,
        });
    }

    public async ValueTask DisposeAsync()
    {
        await _lab.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Theory]
    [MemberData(nameof(Answers))]
    public async Task Query_OnASmallSeason_GivesTheAnswerWorkedOutByHand(int number, string[] expected)
    {
        var query = AnalystQueries.Read()[number - 1].Replace("KT-NITRO-25", ExportLab.TrialCode, StringComparison.Ordinal);

        var rows = await _lab.ReadAsync(session => RowsAsync(session, query));

        // Numbers of alerts are the database's own affair.
        var found = rows.Select(row => string.Join('|', (number == 9 ? row.Skip(1) : row).Select(Text)));
        Assert.Equal(expected.Select(line => line.Replace("{101}", _lab.Barcode("101", 1), StringComparison.Ordinal).Replace("{102}", _lab.Barcode("102", 1), StringComparison.Ordinal)), found);
    }

    /// <summary>As the database has them: a difference of two means can have more digits than .NET's decimal holds.</summary>
    private static async Task<List<List<object?>>> RowsAsync(WarehouseSession session, string query)
    {
        using var command = session.Connection.CreateCommand();
        command.CommandText = query;
        using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var rows = new List<List<object?>>();
        while (await reader.ReadAsync(TestContext.Current.CancellationToken))
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(column => reader.IsDBNull(column) ? null : reader.GetProviderSpecificValue(column))]);
        }

        return rows;
    }

    private NewFact Chip(string plot, string key, string meter, decimal value) =>
        ExportLab.Reading(_lab.Barcode(plot, 1), key, value) with { Instrument = meter, QuantityId = QuantityCatalogue.HunterL.Id, Extract = null, RawUnit = "1" };

    private static IEnumerable<NewFact> Batch(string run, decimal start, decimal lowest, decimal time) =>
        new[] { (QuantityCatalogue.OilStart, start), (QuantityCatalogue.OilLowest, lowest), (QuantityCatalogue.FryTime, time) }.Select(pair =>
            ExportLab.Reading("", pair.Item1.Name, pair.Item2) with { Subject = FactSubject.FryBatch, Barcode = null, Instrument = "fryer 1", Run = run, QuantityId = pair.Item1.Id, Extract = null, Replicate = null, Operator = "A. Person" });

    /// <summary>Both databases' types as one text; sums of binary numbers are rounded to the ninth decimal.</summary>
    private static string Text(object? value) => value switch
    {
        null => "",
        double number => Math.Round(number, 9).ToString("0.#########", CultureInfo.InvariantCulture),
        SqlDecimal number => Math.Round(number.ToDouble(), 9).ToString("0.#########", CultureInfo.InvariantCulture),
        SqlString text => text.Value,
        decimal number => Math.Round(number, 9).ToString("0.#########", CultureInfo.InvariantCulture),
        DateTime day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        DateTimeOffset at => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
        string text when DateTimeOffset.TryParseExact(text, "yyyy-MM-ddTHH:mm:ss.fffZ", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };
}
