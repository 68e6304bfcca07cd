using System.Text.Json;
using System.Text.Json.Nodes;
using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

public sealed class PlanStoreTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = new(2026, 9, 20, 14, 0, 0, TimeSpan.Zero);
    private static readonly string[] Tables = ["trial", "factor_level", "bay", "plot", "plot_level", "pull", "sample", "expected_measurement", "repeatability", "outbox", "change_log"];

    private ScratchWarehouse _scratch = null!;

    public async ValueTask InitializeAsync() => _scratch = await ScratchWarehouse.CreateAsync();

    public async ValueTask DisposeAsync() => await _scratch.DisposeAsync();

    [Fact]
    public async Task LoadAsync_OfANewPlan_WritesEveryTableAndTellsIt()
    {
        var load = await LoadAsync(SpecExample.Plan);

        Assert.Equal(PlanLoadState.Loaded, load.State);
        Assert.Equal(24, load.NewSamples);
        Assert.Equal([1, 4, 1, 8, 16, 3, 24, 10, 1, 1, 2], await CountsAsync());
        var message = Assert.Single(await MessagesAsync());
        Assert.Equal("EX-NITRO-26", message.TrialCode);
        Assert.Empty(message.JoinedBarcodes);
        var change = Assert.Single(await ChangesAsync());
        Assert.Equal(("trial plan loaded", "field lead"), (change.What, change.Who));
    }

    [Fact]
    public async Task LoadAsync_OfTheSamePlanTwice_ChangesNothing()
    {
        await LoadAsync(SpecExample.Plan);
        var before = await CountsAsync();

        var load = await LoadAsync(SpecExample.Plan);

        Assert.Equal(PlanLoadState.Unchanged, load.State);
        Assert.Equal(before, await CountsAsync());
    }

    [Fact]
    public async Task LoadAsync_OfALongerPlan_AddsPullsAndPlots()
    {
        await LoadAsync(SpecExample.Plan);

        var load = await LoadAsync(SpecExample.PlanWith(Lengthen));

        Assert.Equal(PlanLoadState.Extended, load.State);
        Assert.Equal(8 + 1 + 3, load.NewSamples);
        Assert.Equal([1, 4, 1, 9, 18, 4, 36, 12, 1, 2, 4], await CountsAsync());
        Assert.Contains(await ChangesAsync(), change => change.Why.Contains("plot 301, pull 4", StringComparison.Ordinal));
    }

    [Fact]
    public async Task LoadAsync_OfCorrectedDatesAndWords_UpdatesThemAndLogsBothValues()
    {
        await LoadAsync(SpecExample.Plan);

        var load = await LoadAsync(SpecExample.PlanWith(root =>
        {
            root["trial"]!["title"] = "Late nitrogen";
            root["pulls"]![2]!["due"] = "2027-02-03";
            root["expected"]![1]!["readings"] = 20;
            root["bays"]![0]!["setPointC"] = 7.2;
        }));

        Assert.Equal(
            [
                "title: Nitrogen and storage life of two clones in the warehouse, Late nitrogen in the document",
                "set point of bay B1: 8.9 in the warehouse, 7.2 in the document",
                "due day of pull 3: 2027-02-01 in the warehouse, 2027-02-03 in the document",
                "readings of hunter_l expected at pull 1: 30 in the warehouse, 20 in the document",
                "readings of hunter_l expected at pull 2: 30 in the warehouse, 20 in the document",
                "readings of hunter_l expected at pull 3: 30 in the warehouse, 20 in the document",
            ],
            load.Differences.Select(difference => difference.ToString()));
        Assert.Equal(PlanLoadState.Unchanged, (await LoadAsync(SpecExample.PlanWith(root =>
        {
            root["trial"]!["title"] = "Late nitrogen";
            root["pulls"]![2]!["due"] = "2027-02-03";
            root["expected"]![1]!["readings"] = 20;
            root["bays"]![0]!["setPointC"] = 7.2;
        }))).State);
        Assert.Equal(6, (await ChangesAsync()).Count(change => change.What == "trial plan corrected"));
    }

    [Fact]
    public async Task LoadAsync_WhenPlotsWouldChangeOrDisappear_RefusesAndListsEveryDifference()
    {
        await LoadAsync(SpecExample.Plan);
        var before = await CountsAsync();

        var load = await LoadAsync(SpecExample.PlanWith(root =>
        {
            var levels = root["plots"]![0]!["levels"]!;
            var others = root["plots"]![2]!["levels"]!;
            (levels["nitrogen"], others["nitrogen"]) = ("120", "240");
            root["plots"]!.AsArray().RemoveAt(7);
            root["design"]!["incomplete"] = "Plot 204 drowned in July.";
            root["trial"]!["mark"] = "EY";
            root["pulls"]!.AsArray().RemoveAt(2);
            root["expected"]!.AsArray().RemoveAt(3);
            root["expected"]![2]!["pulls"] = new JsonArray(1);
            root["trial"]!["title"] = "Not to be seen";
        }));

        Assert.Equal(PlanLoadState.Refused, load.State);
        Assert.Equal(before, await CountsAsync());
        var differences = load.Differences.Select(difference => difference.ToString()).ToList();
        Assert.Contains("mark: EX in the warehouse, EY in the document", differences);
        Assert.Contains("treatment of plot 101: nitrogen 240 kg/ha in the warehouse, nitrogen 120 kg/ha in the document", differences);
        Assert.Contains("treatment of plot 103: nitrogen 120 kg/ha in the warehouse, nitrogen 240 kg/ha in the document", differences);
        Assert.Contains("plot 204: planned in the warehouse, nothing in the document", differences);
        Assert.Contains("pull 3: planned in the warehouse, nothing in the document", differences);
        Assert.Contains("readings of weight_in_water expected at pull 1: planned in the warehouse, nothing in the document", differences);
        Assert.DoesNotContain(differences, difference => difference.Contains("Not to be seen", StringComparison.Ordinal));
    }

    [Fact]
    public async Task LoadAsync_WhenPlotsChangePlaces_RefusesBecauseLabelsArePrinted()
    {
        await LoadAsync(SpecExample.Plan);

        var load = await LoadAsync(SpecExample.PlanWith(root =>
        {
            var first = root["plots"]![0]!.DeepClone();
            root["plots"]!.AsArray().RemoveAt(0);
            root["plots"]!.AsArray().Insert(1, first);
        }));

        Assert.Equal(PlanLoadState.Refused, load.State);
        Assert.Equal(6, load.Differences.Count(difference => difference.What.StartsWith("barcode of plot 10", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task LoadAsync_WhenAnotherTrialHasTheMark_IsRefused()
    {
        await LoadAsync(SpecExample.Plan);

        var load = await LoadAsync(SpecExample.PlanWith(root => root["trial"]!["code"] = "OTHER"));

        Assert.Equal(PlanLoadState.Refused, load.State);
        Assert.Equal("mark EX of season 2026: trial EX-NITRO-26 in the warehouse, trial OTHER in the document", Assert.Single(load.Differences).ToString());
    }

    [Fact]
    public async Task LoadAsync_OfOlderRepeatability_DoesNotBringItBack()
    {
        await LoadAsync(SpecExample.Plan);
        await LoadAsync(SpecExample.PlanWith(root => root["repeatability"]![0]!["pairs"] = 80));

        var load = await LoadAsync(SpecExample.Plan);

        Assert.Equal(PlanLoadState.Unchanged, load.State);
        Assert.Equal(2, (await CountsAsync())[8]);
    }

    [Fact]
    public async Task LoadAsync_WhenReadingsWaited_JoinsThemAndReleasesWholeFiles()
    {
        var samples = PlanSamples.Of(SpecExample.Plan);
        var stranger = "26ZZ01001" + LabPipeline.Science.Barcodes.Mod37x36.Compute("26ZZ01001");
        await WaitingFileAsync(1, samples[0].Barcode.Text, samples[1].Barcode.Text);
        await WaitingFileAsync(2, samples[2].Barcode.Text, stranger);
        await WaitingFileAsync(3, stranger, stranger);

        var load = await LoadAsync(SpecExample.Plan);

        Assert.Equal([samples[0].Barcode.Text, samples[1].Barcode.Text, samples[2].Barcode.Text], load.JoinedBarcodes);
        Assert.Equal([1, 2], load.JoinedFileIds);
        Assert.Equal([1], load.StoredFileIds);
        Assert.Equal(["stored", "waiting", "waiting"], await StatesAsync());
        var message = Assert.Single(await MessagesAsync());
        Assert.Equal(load.JoinedBarcodes, message.JoinedBarcodes);
        Assert.Equal([1, 2], message.FileIds);
    }

    [Fact]
    public async Task LoadAsync_OfALongerPlan_JoinsOnlyWhatWaited()
    {
        await LoadAsync(SpecExample.Plan);
        var longer = SpecExample.PlanWith(Lengthen);
        var early = PlanSamples.Of(longer).First(sample => sample.Pull.Number == 4).Barcode.Text;
        await WaitingFileAsync(1, PlanSamples.Of(SpecExample.Plan)[0].Barcode.Text, early);

        var load = await LoadAsync(longer);

        Assert.Equal([early], load.JoinedBarcodes);
        Assert.Equal([1], load.StoredFileIds);
    }

    private static void Lengthen(JsonObject root)
    {
        root["pulls"]!.AsArray().Add(JsonNode.Parse("""{ "number": 4, "due": "2027-05-03", "opens": "2027-05-03", "closes": "2027-05-07" }"""));
        root["design"]!["blocks"]!.AsArray().Add("3");
        root["design"]!["incomplete"] = "Block 3 has one plot so far.";
        root["plots"]!.AsArray().Add(JsonNode.Parse("""{ "plot": "301", "block": "3", "bay": "B1", "levels": { "clone": "KT-104", "nitrogen": "120" } }"""));
    }

    private Task<PlanLoad> LoadAsync(TrialPlan plan) =>
        _scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, plan, Now, "field lead"), TestContext.Current.CancellationToken);

    private Task<IReadOnlyList<int>> CountsAsync() => ReadAsync(async session =>
    {
        var counts = new List<int>();
        foreach (var table in Tables)
        {
            counts.Add(await session.Connection.ExecuteScalarAsync<int>($"select count(*) from {table}"));
        }

        return (IReadOnlyList<int>)counts;
    });

    private Task<IReadOnlyList<Change>> ChangesAsync() => ReadAsync(session => ChangeLogStore.ListAsync(session, "trial:EX-NITRO-26"));

    private Task<List<string>> StatesAsync() =>
        ReadAsync(async session => (await session.Connection.QueryAsync<string>("select state from source_file order by file_id")).AsList());

    private Task<List<TrialPlanLoaded>> MessagesAsync() => ReadAsync(async session =>
        (await OutboxStore.ListUnpublishedAsync(session, [typeof(TrialPlanLoaded).FullName!], 100)).Select(message => JsonSerializer.Deserialize<TrialPlanLoaded>(message.Body)!).ToList());

    private Task<T> ReadAsync<T>(Func<WarehouseSession, Task<T>> read) => _scratch.Warehouse.ReadAsync(read, TestContext.Current.CancellationToken);

    /// <summary>A file with one reading for each barcode, as intake leaves it when a sample is not registered.</summary>
    private Task WaitingFileAsync(int fileId, params string[] barcodes) => _scratch.Warehouse.WriteAsync(
        async session =>
        {
            var first = (fileId * 100) + 1;
            await session.Connection.ExecuteAsync(
                """
                insert into source_file (file_id, sha256, kind, name, bytes, archived_as, taken_at, state, reason_code, reason, row_count, new_count,
                                         repeated_count, conflicting_count, parked_count, first_reading_id, last_reading_id)
                values (@fileId, @fileId, 'sugar', 'sugars.csv', 1, 'a', '2026-10-06T00:00:00.000Z', 'waiting', 'unknown-barcode', 'r', 2, 2, 0, 0, 0, @first, @last)
                """,
                new { fileId, first, last = first + barcodes.Length - 1 },
                session.Transaction);
            await session.Connection.ExecuteAsync(
                "insert into instrument_run (run_id, instrument, run) values (@fileId, 'A', @fileId)", new { fileId }, session.Transaction);
            await session.Connection.ExecuteAsync(
                """
                insert into reading (reading_id, run_id, row_key, quantity_id, barcode, value, below_limit, raw_value, raw_unit, file_id, line, standing)
                values (@id, @fileId, @id, 1, @barcode, 0.05, 0, '5.0', 'mg/dL', @fileId, 2, 0)
                """,
                barcodes.Select((barcode, index) => new { id = first + index, fileId, barcode }),
                session.Transaction);
        },
        TestContext.Current.CancellationToken);
}
