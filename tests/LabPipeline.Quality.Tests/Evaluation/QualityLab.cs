using System.Text.Json.Nodes;
using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>A warehouse with the plan of an invented trial: eight clones in three blocks, two pulls, the second closing on the day summer time ends.</summary>
internal sealed class QualityLab : IAsyncDisposable
{
    public const string TrialCode = "NT26";

    private static readonly string[] Blocks = ["1", "2", "3"];
    private static readonly string[] Clones = ["KT-101", "KT-102", "KT-103", "KT-104", "KT-105", "KT-106", "KT-107", "KT-108"];

    private readonly ScratchWarehouse _scratch;
    private readonly TimeProvider _time;

    private QualityLab(ScratchWarehouse scratch, TimeProvider time, TrialPlan plan)
    {
        _scratch = scratch;
        _time = time;
        Plan = plan;
        Evaluation = new QualityEvaluation(new RuleSet(Limits), Limits);
    }

    public static RuleLimits Limits { get; } = new();

    public TrialPlan Plan { get; }

    public QualityEvaluation Evaluation { get; }

    public LabWarehouse Warehouse => _scratch.Warehouse;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public static async Task<QualityLab> CreateAsync(TimeProvider time, bool withPlan = true, DialectName store = DialectName.Sqlite)
    {
        var result = PlanDocument.Parse(PlanJson(), "plan.json");
        Assert.Empty(result.Faults.Select(fault => fault.Describe("plan.json")));
        var lab = new QualityLab(await ScratchWarehouse.CreateAsync(store, time), time, result.Plan!);
        if (withPlan)
        {
            await lab.LoadPlanAsync();
        }

        return lab;
    }

    public Task LoadPlanAsync() => WriteAsync(session => PlanStore.LoadAsync(session, Plan, _time.GetUtcNow(), "field lead"));

    /// <summary>Barcode of a plot, counted from 0 in the order of the plan: blocks of eight clones.</summary>
    public string Barcode(int plot, int pull = 1) => PlanSamples.Of(Plan).Where(sample => sample.Pull.Number == pull).ElementAt(plot).Barcode.Text;

    /// <summary>Stores a file and its facts as an intake does.</summary>
    public async Task<int> StoreAsync(string name, IReadOnlyList<NewFact> facts, string state = FileState.Stored, string? reason = null, string? methodFacts = null)
    {
        var now = _time.GetUtcNow();
        return await WriteAsync(async session =>
        {
            var file = new SourceFile
            {
                Sha256 = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes($"{name}|{reason}|{string.Join('|', facts)}"))),
                Kind = "sugar",
                Name = name,
                ArchivedAs = name,
                TakenAt = now,
                State = state,
                Reason = reason,
                ReasonCode = reason is null ? null : "test",
                MethodFacts = methodFacts,
            };
            var id = await FileLedgerStore.InsertAsync(session, file);
            using var loader = Warehouse.Dialect.CreateFactLoader(session);
            loader.Begin(id);
            foreach (var fact in facts)
            {
                loader.Add(fact);
            }

            var counts = await loader.CompleteAsync();
            await FileLedgerStore.SettleAsync(session, file with { FileId = id, FirstReadingId = counts.FirstReadingId, LastReadingId = counts.LastReadingId });
            await FileLedgerStore.InsertArrivalAsync(session, new Arrival { FileId = id, Folder = "sugar", Name = name, ModifiedAt = now, ArrivedAt = now });
            return id;
        });
    }

    /// <summary>Two extracts of a sample with V = m, so that contents are the concentrations given.</summary>
    public static IEnumerable<NewFact> Sugars(string barcode, decimal first, decimal second, DateTimeOffset measuredAt, string run = "2026-10-06", decimal mass = 100m) =>
        new[] { ("A", first), ("B", second) }.SelectMany(extract => new[]
        {
            (QuantityCatalogue.GlucoseInExtract, extract.Item2), (QuantityCatalogue.ExtractFreshMass, mass), (QuantityCatalogue.ExtractVolume, 100m), (QuantityCatalogue.DilutionFactor, 1m),
        }.Select(value => Fact(value.Item1, value.Item2) with
        {
            Instrument = "analyser 1",
            Run = run,
            Barcode = barcode,
            RowKey = $"{barcode}|{extract.Item1}",
            Extract = extract.Item1,
            MeasuredAt = measuredAt,
        }));

    public static IEnumerable<NewFact> Weights(string barcode, decimal air, decimal water, string run, DateTimeOffset measuredAt) =>
        new[] { (QuantityCatalogue.WeightInAir, air), (QuantityCatalogue.WeightInWater, water) }
            .Select(value => Fact(value.Item1, value.Item2) with { Instrument = "balance 1", Run = run, Barcode = barcode, RowKey = barcode, MeasuredAt = measuredAt });

    public static NewFact Fry(Quantity quantity, decimal value, string batch) =>
        Fact(quantity, value) with { Subject = FactSubject.FryBatch, Instrument = "fryer", Run = batch, RowKey = batch, Barcode = null };

    public Task<ReadingsRecorded> SendRecordedAsync(int fileId, params string[] barcodes) => SendAsync(new ReadingsRecorded(fileId, 1, 1, barcodes, 0, 0), $"{fileId}");

    public Task<TMessage> SendAsync<TMessage>(TMessage message, string identity)
        where TMessage : class => WriteAsync(async session =>
        {
            await OutboxStore.AddAsync(session, message, identity, _time.GetUtcNow());
            return message;
        });

    /// <summary>Marks everything sent so far as handled by the quality consumers.</summary>
    public Task HandleAllAsync() => WriteAsync(session => session.Connection.ExecuteAsync(
        """
        insert into inbox (message_id, consumer, handled_at)
        select o.message_id, @consumer, '2026-01-01T00:00:00.000Z' from outbox o
        where not exists (select 1 from inbox i where i.message_id = o.message_id and i.consumer = @consumer)
        """,
        new[] { ReadingsRecordedConsumer.Endpoint, ReadingsChangedConsumer.Endpoint, TrialPlanLoadedConsumer.Endpoint, FileRefusedConsumer.Endpoint }
            .Select(consumer => new { consumer }),
        session.Transaction));

    public Task BeatAsync(string service, bool caughtUp) => WriteAsync(async session =>
    {
        var now = _time.GetUtcNow();
        await HeartbeatStore.BeatAsync(session, new Heartbeat { Service = service, StartedAt = now, BeatAt = now, CaughtUpAt = caughtUp ? now : null });
        return true;
    });

    public Task<T> WriteAsync<T>(Func<WarehouseSession, Task<T>> write) => Warehouse.WriteAsync(write, Token);

    public Task EvaluateAsync(Func<WarehouseSession, DateTimeOffset, Task> evaluate) => Warehouse.WriteAsync(session => evaluate(session, _time.GetUtcNow()), Token);

    public async Task<IReadOnlyList<Alert>> AlertsAsync() =>
        [.. (await Warehouse.ReadAsync(session => AlertStore.ListAsync(session, new AlertFilter()), Token)).OrderBy(alert => alert.AlertId)];

    public Task<IReadOnlyList<SampleResultRow>> ResultsAsync(params string[] barcodes) => Warehouse.ReadAsync(session => ResultStore.ListAsync(session, barcodes), Token);

    public Task<IReadOnlyList<string>> SentAsync<TMessage>() => Warehouse.ReadAsync<IReadOnlyList<string>>(
        async session => (await session.Connection.QueryAsync<string>("select body from outbox where type = @type order by position", new { type = typeof(TMessage).FullName })).AsList(), Token);

    public ValueTask DisposeAsync() => _scratch.DisposeAsync();

    private static NewFact Fact(Quantity quantity, decimal value) => new(
        FactSubject.Sample, 2, "", "", "", quantity.Id, "", null, value, false, value.ToString(System.Globalization.CultureInfo.InvariantCulture), quantity.Unit.Symbol,
        null, null, null, null, "technician 1", null, null);

    private static string PlanJson() => new JsonObject
    {
        ["schema"] = 1,
        ["trial"] = new JsonObject
        {
            ["code"] = TrialCode,
            ["mark"] = "NT",
            ["title"] = "Storage life of eight clones",
            ["question"] = "Which clone keeps pale longest?",
            ["season"] = 2026,
            ["site"] = "North field",
            ["timeZone"] = "America/Chicago",
            ["harvestedOn"] = "2026-09-16",
        },
        ["design"] = new JsonObject
        {
            ["kind"] = "rcbd",
            ["blocks"] = Texts(Blocks),
            ["factors"] = new JsonArray(new JsonObject { ["name"] = "clone", ["levels"] = Texts(Clones) }),
            ["clone"] = "clone",
        },
        ["bays"] = new JsonArray(new JsonObject { ["code"] = "B1", ["setPointC"] = 8.9 }, new JsonObject { ["code"] = "B2", ["setPointC"] = 8.9 }),
        ["plots"] = new JsonArray([.. Blocks.SelectMany(block => Clones.Select((clone, index) => (JsonNode)new JsonObject
        {
            ["plot"] = $"{block}0{index + 1}",
            ["block"] = block,
            ["bay"] = block == "3" ? "B2" : "B1",
            ["levels"] = new JsonObject { ["clone"] = clone },
        }))]),
        ["pulls"] = new JsonArray(
            new JsonObject { ["number"] = 1, ["due"] = "2026-10-05", ["opens"] = "2026-10-05", ["closes"] = "2026-10-09" },
            new JsonObject { ["number"] = 2, ["due"] = "2026-10-29", ["opens"] = "2026-10-29", ["closes"] = "2026-11-01" }),
        ["samples"] = new JsonObject { ["tubers"] = 10, ["slicesPerTuber"] = 3, ["extracts"] = 2 },
        ["results"] = new JsonObject
        {
            ["dryMatterRelation"] = "dry_matter_von_scheele_1937",
            ["darkBelowHunterL"] = 55,
            ["severeFromScore"] = 3,
            ["standardClone"] = "KT-101",
        },
        ["expected"] = new JsonArray(new JsonObject { ["quantity"] = "glucose_in_extract", ["readings"] = 2 }),
    }.ToJsonString();

    private static JsonArray Texts(IEnumerable<string> texts) => new([.. texts.Select(text => (JsonNode)text)]);
}
