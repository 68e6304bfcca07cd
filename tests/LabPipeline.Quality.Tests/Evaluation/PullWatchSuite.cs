using LabPipeline.Hosting.Bus;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>The watch tells absences, but only when everything that has arrived was read, and by the trial's own calendar.</summary>
public abstract class PullWatchSuite(DialectName store) : IAsyncLifetime
{
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 10, 7, 15, 0, 0, TimeSpan.Zero));
    private readonly RelaySignal _relay = new();
    private QualityLab _lab = null!;
    private PullWatch _watch = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _lab = await QualityLab.CreateAsync(_time, store: store);
        await _lab.HandleAllAsync();
        _watch = NewWatch();
    }

    public async ValueTask DisposeAsync()
    {
        _watch.Dispose();
        _relay.Dispose();
        await _lab.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Look_AfterTheGraceWithoutReadings_HoldsTheDuePullOnce()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);

        var look = await _watch.LookAsync(Token);
        await _watch.LookAsync(Token);

        Assert.Equal(new WatchLook(null, 1), look);
        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal(("missing pull", "pull:NT26/1", AlertLevels.Hold, 1), (alert.RuleName, alert.Scope, alert.Level, alert.TimesRaised));
        Assert.Contains("bay B1: 101, 102", alert.Advice, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("intake-sugar", false, "intake-sugar not caught up since start")]
    [InlineData("notifier", true, "no intake has reported yet")]
    public async Task Look_WhileIntakeIsBehind_IsSkippedWithItsReason(string service, bool caughtUp, string reason)
    {
        await _lab.BeatAsync(service, caughtUp);

        Assert.Equal(reason, (await _watch.LookAsync(Token)).Skipped);
        Assert.Empty(await _lab.AlertsAsync());
    }

    [Fact]
    public async Task Look_WhileMessagesWaitToBeEvaluated_IsSkipped()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        await _lab.SendRecordedAsync(1, _lab.Barcode(0));

        Assert.Equal("1 messages not evaluated yet", (await _watch.LookAsync(Token)).Skipped);
        await _lab.HandleAllAsync();
        Assert.Null((await _watch.LookAsync(Token)).Skipped);
    }

    [Fact]
    public async Task Look_WhenAnotherProcessHoldsTheLease_IsSkipped()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        await _lab.WriteAsync(session => LeaseStore.TryHoldAsync(session, PullWatch.Lease, "elsewhere", _time.GetUtcNow(), _time.GetUtcNow().AddMinutes(3)));

        Assert.Equal("another process holds the lease", (await _watch.LookAsync(Token)).Skipped);
        _time.Advance(TimeSpan.FromMinutes(3));
        Assert.Null((await _watch.LookAsync(Token)).Skipped);
    }

    [Fact]
    public async Task Look_WhenSummerTimeEnds_ClosesTheWindowAfterATwentyFiveHourDay()
    {
        // Pull 2 closes on 2026-11-01, when Chicago goes back to UTC-6 at 02:00: that day ends at 06:00 UTC on the 2nd, not at 05:00.
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        await MeasureAsync(1, [.. Enumerable.Range(0, 24)]);
        _time.SetUtcNow(new DateTimeOffset(2026, 11, 2, 5, 59, 59, TimeSpan.Zero));
        await _watch.LookAsync(Token);
        Assert.Equal(AlertLevels.Hold, Assert.Single(await OpenAsync()).Level);

        _time.SetUtcNow(new DateTimeOffset(2026, 11, 2, 6, 0, 0, TimeSpan.Zero));
        await _watch.LookAsync(Token);

        var alert = Assert.Single(await OpenAsync());
        Assert.Equal((AlertLevels.Block, 2), (alert.Level, alert.TimesRaised));
    }

    [Fact]
    public async Task Look_AfterReadingsCame_ClearsOnTheSameDay()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        await _watch.LookAsync(Token);
        await MeasureAsync(1, [0, 1]);

        var look = await _watch.LookAsync(Token);

        Assert.Equal(1, look.Pulls);
        Assert.Equal(AlertStates.Cleared, Assert.Single(await _lab.AlertsAsync()).State);
        Assert.Equal(0, (await _watch.LookAsync(Token)).Pulls);
    }

    [Fact]
    public async Task Look_AfterTheWindow_TellsMissingPlotsOnceForThePull()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        await MeasureAsync(1, [.. Enumerable.Range(0, 22)]);
        _time.SetUtcNow(new DateTimeOffset(2026, 10, 10, 5, 0, 0, TimeSpan.Zero));

        await _watch.LookAsync(Token);

        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Contains("2 of 24 samples have no reading: bay B2: 307, 308", alert.Headline, StringComparison.Ordinal);
        Assert.Contains("\"where\":\"pull 1, block 3\"", alert.Facts, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Look_AfterTheWindow_TellsSamplesWithReadingsMissing()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        await MeasureAsync(1, [.. Enumerable.Range(0, 24)], lacking: 5);
        await _watch.LookAsync(Token);
        Assert.Empty(await _lab.AlertsAsync());
        _time.SetUtcNow(new DateTimeOffset(2026, 10, 10, 5, 0, 0, TimeSpan.Zero));

        await _watch.LookAsync(Token);

        var alert = Assert.Single(await _lab.AlertsAsync());
        Assert.Equal(("incomplete sample", _lab.Barcode(5), "pull:NT26/1"), (alert.RuleName, alert.Barcode, alert.Scope));
        Assert.Contains("glucose_in_extract 1 of 2", alert.Headline, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Look_InANewProcess_TellsWhatClosedWhileNoneRan()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        _time.SetUtcNow(new DateTimeOffset(2026, 12, 24, 5, 0, 0, TimeSpan.Zero));

        using var fresh = NewWatch();
        await fresh.LookAsync(Token);

        Assert.Equal(["pull:NT26/1", "pull:NT26/2"], (await _lab.AlertsAsync()).Select(alert => alert.Scope));
    }

    [Fact]
    public async Task Look_WhileAFileIsHeldTooLong_TellsItEvenWhenIntakeIsBehind()
    {
        var seen = _time.GetUtcNow();
        await _lab.WriteAsync(async session =>
        {
            await HeldFileStore.PutAsync(session, new HeldFile { Folder = "sugar", Name = "run.csv", ReasonCode = "unfinished", Reason = "the last line has no end", FirstSeenAt = seen, LastSeenAt = seen });
            return true;
        });
        await _watch.LookAsync(Token);
        Assert.Empty(await _lab.AlertsAsync());
        _time.Advance(TimeSpan.FromMinutes(16));

        await _watch.LookAsync(Token);
        Assert.Equal(("held:sugar/run.csv", AlertStates.Open), (await _lab.AlertsAsync()).Select(alert => (alert.Scope, alert.State)).Single());
        await _lab.WriteAsync(async session =>
        {
            await HeldFileStore.RemoveAsync(session, "sugar", ["run.csv"]);
            return true;
        });
        await _watch.LookAsync(Token);

        Assert.Equal(AlertStates.Cleared, Assert.Single(await _lab.AlertsAsync()).State);
    }

    [Fact]
    public async Task Watch_WhenStarted_LooksEveryMinuteByItself()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        await _watch.StartAsync(Token);

        // The timer may be set after the first step of the clock; a few steps more do no harm.
        for (var minute = 0; minute < 60 && (await _lab.AlertsAsync()).Count == 0; minute++)
        {
            _time.Advance(PullWatch.Every);
            await Task.Delay(100, Token);
        }

        await _watch.StopAsync(Token);
        Assert.Equal("missing pull", Assert.Single(await _lab.AlertsAsync()).RuleName);
    }

    [Fact]
    public async Task Watch_WhenTheDatabaseIsAwayForAWhile_SaysSoAndTellsAfterwards()
    {
        await _lab.BeatAsync("intake-sugar", caughtUp: true);
        var database = new OutageDialect(_lab.Warehouse.Dialect) { IsAway = true };
        using var warehouse = new LabWarehouse(database, _time);
        var log = new LogBook<PullWatch>();
        using var watch = new PullWatch(warehouse, _lab.Evaluation, _relay, _time, log);
        await watch.StartAsync(Token);
        await log.WaitForAsync("PullWatchFailed", () => _time.Advance(PullWatch.Every));
        Assert.Empty(await _lab.AlertsAsync());

        database.IsAway = false;
        await Wait.UntilAsync(async () => (await _lab.AlertsAsync()).Count > 0, () => _time.Advance(PullWatch.Every));

        Assert.Equal("missing pull", Assert.Single(await _lab.AlertsAsync()).RuleName);
        await watch.StopAsync(Token);
    }

    private PullWatch NewWatch() => new(_lab.Warehouse, _lab.Evaluation, _relay, _time, NullLogger<PullWatch>.Instance);

    private async Task<IEnumerable<Alert>> OpenAsync() => (await _lab.AlertsAsync()).Where(alert => alert.State == AlertStates.Open);

    private async Task MeasureAsync(int pull, int[] plots, int? lacking = null)
    {
        var facts = plots.SelectMany(plot => QualityLab.Sugars(_lab.Barcode(plot, pull), 0.1m, 0.1m, new DateTimeOffset(2026, 10, 6, 15, 0, 0, TimeSpan.Zero)).Take(plot == lacking ? 4 : 8));
        var file = await _lab.StoreAsync($"pull-{pull}.csv", [.. facts]);
        await _lab.SendRecordedAsync(file, [.. plots.Select(plot => _lab.Barcode(plot, pull))]);
        await _lab.HandleAllAsync();
    }
}
