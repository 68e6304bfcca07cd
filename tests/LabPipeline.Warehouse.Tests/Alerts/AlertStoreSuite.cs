using LabPipeline.Testing;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Tests.Alerts;

public abstract class AlertStoreSuite(DialectName store) : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 15, 30, 0, TimeSpan.Zero);

    private ScratchWarehouse _scratch = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => _scratch = await ScratchWarehouse.CreateAsync(store);

    public async ValueTask DisposeAsync()
    {
        await _scratch.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Alert_WhenStored_ComesBackAsItWas()
    {
        var alert = Some("a") with { TrialCode = "NT26", PullNo = 3, Barcode = "26K70012C" };

        var id = await AddAsync(alert);

        Assert.Equal(alert with { AlertId = id }, await GetAsync(id));
    }

    [Fact]
    public async Task List_ByFilter_NarrowsAndShowsTheNewestFirst()
    {
        await AddAsync(Some("a"));
        var newer = await AddAsync(Some("b") with { OpenedAt = Now.AddMinutes(1) });
        var block = await AddAsync(Some("c") with { Level = AlertLevels.Block, OpenedAt = Now.AddMinutes(-1), TrialCode = "NT26" });

        Assert.Equal([newer], (await ListAsync(new AlertFilter { Most = 1 })).Select(alert => alert.AlertId));
        Assert.Equal([block], (await ListAsync(new AlertFilter { Level = AlertLevels.Block })).Select(alert => alert.AlertId));
        Assert.Equal([block], (await ListAsync(new AlertFilter { TrialCode = "NT26" })).Select(alert => alert.AlertId));
        Assert.Empty(await ListAsync(new AlertFilter { State = AlertStates.Settled }));
        Assert.Equal(3, (await ListAsync(new AlertFilter { RuleName = "rule" })).Count);
    }

    [Fact]
    public async Task List_WhenTheWorstComesFirst_IsReadPartByPart()
    {
        var block = await AddAsync(Some("a") with { Level = AlertLevels.Block });
        var note = await AddAsync(Some("b") with { Level = AlertLevels.Note, OpenedAt = Now.AddMinutes(2) });
        var hold = await AddAsync(Some("c") with { Level = AlertLevels.Hold, OpenedAt = Now.AddMinutes(1) });
        var filter = new AlertFilter { WorstFirst = true, Most = 2 };

        Assert.Equal([block, hold], (await ListAsync(filter)).Select(alert => alert.AlertId));
        Assert.Equal([note], (await ListAsync(filter with { Skip = 2 })).Select(alert => alert.AlertId));
    }

    [Fact]
    public async Task CountOpen_ByPullRuleAndLevel_LeavesOutWhatIsNotOpen()
    {
        await AddAsync(Some("a") with { TrialCode = "NT26", PullNo = 3 });
        await AddAsync(Some("b") with { TrialCode = "NT26", PullNo = 3 });
        await AddAsync(Some("c") with { TrialCode = "NT26", PullNo = 4 });
        await AddAsync(Some("d") with { State = AlertStates.Cleared });

        var counts = await _scratch.Warehouse.ReadAsync(AlertStore.CountOpenAsync, Token);

        Assert.Equal([(3, 2), (4, 1)], counts.Select(count => (count.PullNo!.Value, count.Alerts)).Order());
    }

    [Fact]
    public async Task Acknowledge_OfAnOpenAlert_NotesTheFirstPersonOnly()
    {
        var id = await AddAsync(Some("a"));

        Assert.Equal(AlertAction.Done, await ActAsync(session => AlertStore.AcknowledgeAsync(session, id, "lab manager", Now)));
        Assert.Equal(AlertAction.Done, await ActAsync(session => AlertStore.AcknowledgeAsync(session, id, "technician 1", Now.AddHours(1))));

        Assert.Equal(("lab manager", Now), ((await GetAsync(id))!.AcknowledgedBy, (await GetAsync(id))!.AcknowledgedAt));
        Assert.Equal(["alert acknowledged"], await TrailAsync(id));
    }

    [Fact]
    public async Task Settle_OfAnOpenAlert_KeepsWhoAndWhyAndLeavesATrail()
    {
        var id = await AddAsync(Some("a"));

        Assert.Equal(AlertAction.Done, await ActAsync(session => AlertStore.SettleAsync(session, id, "lab manager", "tissue used up", Now)));
        Assert.Equal(AlertAction.NotOpen, await ActAsync(session => AlertStore.SettleAsync(session, id, "technician 1", "again", Now)));

        var alert = (await GetAsync(id))!;
        Assert.Equal((AlertStates.Settled, "lab manager", "tissue used up"), (alert.State, alert.SettledBy, alert.SettledWhy));
        Assert.Equal(["alert settled"], await TrailAsync(id));
    }

    [Fact]
    public async Task Actions_OnWhatIsNotThereOrNotOpen_SaySo()
    {
        var cleared = await AddAsync(Some("a") with { State = AlertStates.Cleared });

        Assert.Equal(AlertAction.NotFound, await ActAsync(session => AlertStore.SettleAsync(session, 77, "lab manager", "why", Now)));
        Assert.Equal(AlertAction.NotOpen, await ActAsync(session => AlertStore.AcknowledgeAsync(session, cleared, "lab manager", Now)));
        await Assert.ThrowsAsync<ArgumentException>(() => ActAsync(session => AlertStore.SettleAsync(session, cleared, "lab manager", " ", Now)));
    }

    [Fact]
    public async Task ListByScopes_WithMoreScopesThanOneQueryTakes_FindsAll()
    {
        for (var number = 0; number < 3; number++)
        {
            await AddAsync(Some($"{number}") with { Scope = $"sample:{number * 400}" });
        }

        var scopes = Enumerable.Range(0, 1000).Select(number => $"sample:{number}").ToList();
        var found = await _scratch.Warehouse.ReadAsync(session => AlertStore.ListByScopesAsync(session, scopes), Token);

        Assert.Equal(3, found.Count);
    }

    [Fact]
    public async Task ListOpenByKind_LeavesOutOtherKindsAndClosedAlerts()
    {
        var held = await AddAsync(Some("a") with { Scope = "held:sugar/run.csv" });
        await AddAsync(Some("b") with { Scope = "held:sugar/old.csv", State = AlertStates.Cleared });
        await AddAsync(Some("c") with { Scope = "sample:S" });

        var found = await _scratch.Warehouse.ReadAsync(session => AlertStore.ListOpenByKindAsync(session, "held:"), Token);

        Assert.Equal([held], found.Select(alert => alert.AlertId));
    }

    private static Alert Some(string window) => new()
    {
        Fingerprint = "rule|S|" + window,
        RuleName = "rule",
        Level = AlertLevels.Hold,
        Scope = "sample:S",
        Headline = "found",
        Advice = "look",
        Facts = "{}",
        State = AlertStates.Open,
        TimesRaised = 1,
        OpenedAt = Now,
        ChangedAt = Now,
    };

    private Task<int> AddAsync(Alert alert) => _scratch.Warehouse.WriteAsync(session => AlertStore.AddAsync(session, alert), Token);

    private Task<Alert?> GetAsync(int id) => _scratch.Warehouse.ReadAsync(session => AlertStore.GetAsync(session, id), Token);

    private Task<IReadOnlyList<Alert>> ListAsync(AlertFilter filter) => _scratch.Warehouse.ReadAsync(session => AlertStore.ListAsync(session, filter), Token);

    private Task<AlertAction> ActAsync(Func<WarehouseSession, Task<AlertAction>> act) => _scratch.Warehouse.WriteAsync(act, Token);

    private async Task<IEnumerable<string>> TrailAsync(int id) =>
        (await _scratch.Warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, Alert.SubjectOf(id)), Token)).Select(change => change.What);
}
