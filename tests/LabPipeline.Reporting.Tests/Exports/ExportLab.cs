using System.Globalization;
using System.Text.Json.Nodes;
using CsvHelper;
using CsvHelper.Configuration;
using Dapper;
using LabPipeline.Reporting.Exports;
using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Reporting.Tests.Exports;

/// <summary>A warehouse with the plan of an invented trial: two clones in two blocks, two pulls.</summary>
internal sealed class ExportLab : IAsyncDisposable
{
    public const string TrialCode = "NT26";

    private static readonly DateTimeOffset Now = new(2026, 10, 6, 15, 30, 0, TimeSpan.Zero);

    private readonly ScratchWarehouse _scratch;

    private ExportLab(ScratchWarehouse scratch, TrialPlan plan)
    {
        _scratch = scratch;
        Plan = plan;
    }

    public TrialPlan Plan { get; }

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public static async Task<ExportLab> CreateAsync(DialectName store = DialectName.Sqlite, bool withMiddlePull = false)
    {
        var result = PlanDocument.Parse(PlanJson(withMiddlePull), "plan.json");
        Assert.Empty(result.Faults.Select(fault => fault.Describe("plan.json")));
        var lab = new ExportLab(await ScratchWarehouse.CreateAsync(store), result.Plan!);
        await lab._scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, lab.Plan, Now, "field lead"), Token);
        return lab;
    }

    public string Barcode(string plot, int pull) =>
        PlanSamples.Of(Plan).Single(sample => sample.Plot.Code == plot && sample.Pull.Number == pull).Barcode.Text;

    public Task StoreResultAsync(string barcode, Quantity quantity, decimal value) => StoreResultsAsync(barcode, (quantity, value));

    public Task StoreResultsAsync(string barcode, params (Quantity Quantity, decimal Value)[] results) => _scratch.Warehouse.WriteAsync(
        session => ResultStore.ReplaceAsync(session, [barcode], [.. results.Select(result => new SampleResultRow
        {
            Barcode = barcode,
            QuantityId = result.Quantity.Id,
            Value = result.Value,
            N = 1,
            Basis = "one extract",
            FromReadings = "[1]",
            ComputedAt = Now,
        })]),
        Token);

    public Task StoreAlertAsync(Alert alert) => _scratch.Warehouse.WriteAsync(session => AlertStore.AddAsync(session, alert with { OpenedAt = Now, ChangedAt = Now }), Token);

    public Task StoreReadingsAsync(string name, IEnumerable<NewFact> facts) => _scratch.Warehouse.WriteAsync(
        async session =>
        {
            var id = await FileLedgerStore.InsertAsync(session, new SourceFile { Sha256 = name, Kind = "sugar", Name = name, ArchivedAs = name, TakenAt = Now, State = FileState.Stored });
            using var loader = _scratch.Warehouse.Dialect.CreateFactLoader(session);
            loader.Begin(id);
            foreach (var fact in facts)
            {
                loader.Add(fact);
            }

            await loader.CompleteAsync();
        },
        Token);

    public static NewFact Reading(string barcode, string rowKey, decimal value, string? rawValue = null, string? by = null) => new(
        FactSubject.Sample, 2, "analyser 1", "2026-10-06", rowKey, QuantityCatalogue.GlucoseInExtract.Id, barcode, null, value, false,
        rawValue ?? value.ToString(CultureInfo.InvariantCulture), "g/L", "A", 1, null, null, by, Now, "2026-10-06 10:30");

    public async Task<string> ExportAsync(ExportKind kind, int? pull = null)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        var outcome = await ExportAsync(kind, new ExportScope(TrialCode, pull), text);
        Assert.Equal((ExportState.Written, Parse(text.ToString()).Count), (outcome.State, (int)outcome.Rows));
        return text.ToString();
    }

    public Task<ExportOutcome> ExportAsync(ExportKind kind, ExportScope scope, TextWriter writer) =>
        _scratch.Warehouse.ReadAsync(session => ExportStore.WriteAsync(session, kind, scope, writer), Token);

    /// <summary>The file as it would lie on the disk, at its beginning.</summary>
    public async Task<MemoryStream> ExportAsync(ExportKind kind, ExportFormat format)
    {
        var file = new MemoryStream();
        var outcome = await _scratch.Warehouse.ReadAsync(session => ExportStore.WriteAsync(session, kind, new ExportScope(TrialCode), format, file), Token);
        Assert.Equal(ExportState.Written, outcome.State);
        return new MemoryStream(file.ToArray());
    }

    public Task<IReadOnlyList<string>> ColumnsOfAsync(string view) => _scratch.Warehouse.ReadAsync<IReadOnlyList<string>>(
        async session => (await session.Connection.QueryAsync<string>(
            session.Dialect == DialectName.Sqlite
                ? "select name from pragma_table_info(@view) order by cid"
                : "select name from sys.columns where object_id = object_id(@view) order by column_id",
            new { view })).AsList(), Token);

    public Task<T> ReadAsync<T>(Func<WarehouseSession, Task<T>> read) => _scratch.Warehouse.ReadAsync(read, Token);

    public Task LoadAsync(TrialPlan plan) => _scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, plan, Now, "field lead"), Token);

    public ValueTask DisposeAsync() => _scratch.DisposeAsync();

    /// <summary>The rows by column name, read by a general-purpose library that knows nothing of ours.</summary>
    public static IReadOnlyList<IDictionary<string, object>> Parse(string csv)
    {
        using var text = new StringReader(csv);
        using var reader = new CsvReader(text, new CsvConfiguration(CultureInfo.InvariantCulture) { Mode = CsvMode.RFC4180, NewLine = "\n" });
        return [.. reader.GetRecords<dynamic>().Select(row => (IDictionary<string, object>)row)];
    }

    private static string PlanJson(bool withMiddlePull)
    {
        string[] blocks = ["1", "2"];
        string[] clones = ["KT-101, early", "KT-102"];
        return new JsonObject
        {
            ["schema"] = 1,
            ["trial"] = JsonNode.Parse(
                """
                { "code": "NT26", "mark": "NT", "title": "Storage life of two clones", "question": "Which clone keeps pale longer?", "season": 2026,
                  "site": "North field", "timeZone": "America/Chicago", "harvestedOn": "2026-09-16" }
                """),
            ["design"] = new JsonObject
            {
                ["kind"] = "rcbd",
                ["blocks"] = Texts(blocks),
                ["factors"] = new JsonArray(new JsonObject { ["name"] = "clone", ["levels"] = Texts(clones) }),
                ["clone"] = "clone",
            },
            ["bays"] = JsonNode.Parse("""[{ "code": "B1", "setPointC": 8.9 }]"""),
            ["plots"] = new JsonArray([.. blocks.SelectMany(block => clones.Select((clone, index) => (JsonNode)new JsonObject
            {
                ["plot"] = $"{block}0{index + 1}",
                ["block"] = block,
                ["bay"] = "B1",
                ["levels"] = new JsonObject { ["clone"] = clone },
            }))]),
            ["pulls"] = JsonNode.Parse(
                """
                [{ "number": 1, "due": "2026-10-05", "opens": "2026-10-05", "closes": "2026-10-09" },
                """ + (withMiddlePull ? """{ "number": 2, "due": "2026-11-02", "opens": "2026-11-02", "closes": "2026-11-06" },""" : "") + """
                 { "number": 3, "due": "2026-12-07", "opens": "2026-12-07", "closes": "2026-12-11" }]
                """),
            ["samples"] = JsonNode.Parse("""{ "tubers": 10, "slicesPerTuber": 3, "extracts": 2 }"""),
            ["results"] = new JsonObject
            {
                ["dryMatterRelation"] = "dry_matter_von_scheele_1937",
                ["darkBelowHunterL"] = 55,
                ["severeFromScore"] = 3,
                ["standardClone"] = clones[0],
            },
            ["expected"] = JsonNode.Parse("""[{ "quantity": "glucose_in_extract", "readings": 2 }]"""),
        }.ToJsonString();
    }

    private static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);
}
