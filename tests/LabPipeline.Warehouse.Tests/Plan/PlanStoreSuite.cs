using System.Text.Json;
using System.Text.Json.Nodes;
using Dapper;
using LabPipeline.Contracts.V1;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Tests.Facts;

namespace LabPipeline.Warehouse.Tests.Plan;

public abstract class PlanStoreSuite(DialectName store) : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = new(2026, 9, 20, 14, 0, 0, TimeSpan.Zero);
    private static readonly string[] Tables = ["trial", "factor_level", "bay", "plot", "plot_level", "pull", "sample", "expected_measurement", "repeatability", "outbox", "change_log"];

    private ScratchWarehouse _scratch = null!;

    public async ValueTask InitializeAsync() => _scratch = await ScratchWarehouse.CreateAsync(store);

    public async ValueTask DisposeAsync()
    {
        await _scratch.DisposeAsync();
        GC.SuppressFinalize(this);
    }

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

    /// <summary>A question is planned or it is not.</summary>
    [Fact]
    public async Task LoadAsync_WhenAPlannedContrastChanges_IsRefusedAndAnotherIsAdded()
    {
        await LoadAsync(SpecExample.Plan);

        var changed = await LoadAsync(SpecExample.PlanWith(root => root["contrasts"]![0]!["coefficients"] = new System.Text.Json.Nodes.JsonObject { ["120"] = 1, ["240"] = -1 }));
        var further = await LoadAsync(SpecExample.PlanWith(root => root["contrasts"]!.AsArray().Add(System.Text.Json.Nodes.JsonNode.Parse(
            """{ "name": "clones", "factors": ["clone"], "coefficients": { "KT-104": -0.5, "KT-118": 0.5 } }"""))));

        Assert.Equal(PlanLoadState.Refused, changed.State);
        Assert.Equal(["planned contrast late nitrogen: nitrogen: 120 -1, 240 1 in the warehouse, nitrogen: 120 1, 240 -1 in the document"], changed.Differences.Select(difference => difference.ToString()));
        Assert.Equal(PlanLoadState.Extended, further.State);
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
        var whole = await WaitingFileAsync(samples[0].Barcode.Text, samples[1].Barcode.Text);
        var mixed = await WaitingFileAsync(samples[2].Barcode.Text, stranger);
        await WaitingFileAsync(stranger, stranger);

        var load = await LoadAsync(SpecExample.Plan);

        Assert.Equal([samples[0].Barcode.Text, samples[1].Barcode.Text, samples[2].Barcode.Text], load.JoinedBarcodes);
        Assert.Equal([whole, mixed], load.JoinedFileIds);
        Assert.Equal([whole], load.StoredFileIds);
        Assert.Equal(["stored", "waiting", "waiting"], await StatesAsync());
        var message = Assert.Single(await MessagesAsync());
        Assert.Equal(load.JoinedBarcodes, message.JoinedBarcodes);
        Assert.Equal([whole, mixed], message.FileIds);
    }

    [Fact]
    public async Task LoadAsync_OfALongerPlan_JoinsOnlyWhatWaited()
    {
        await LoadAsync(SpecExample.Plan);
        var longer = SpecExample.PlanWith(Lengthen);
        var early = PlanSamples.Of(longer).First(sample => sample.Pull.Number == 4).Barcode.Text;
        var whole = await WaitingFileAsync(PlanSamples.Of(SpecExample.Plan)[0].Barcode.Text, early);

        var load = await LoadAsync(longer);

        Assert.Equal([early], load.JoinedBarcodes);
        Assert.Equal([whole], load.StoredFileIds);
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
    private async Task<int> WaitingFileAsync(params string[] barcodes)
    {
        var name = string.Join(' ', barcodes);
        var (file, _) = await FactFiles.StoreAsync(
            _scratch, name, barcodes.Select((barcode, index) => FactFiles.Reading($"{index}", 0.05m, barcode) with { Run = name }));
        var waiting = file with { State = FileState.Waiting, ReasonCode = "unknown-barcode", Reason = "r" };
        await _scratch.Warehouse.WriteAsync(session => FileLedgerStore.SettleAsync(session, waiting), TestContext.Current.CancellationToken);
        return file.FileId;
    }
}
