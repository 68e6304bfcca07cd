using Dapper;
using LabPipeline.Warehouse.Alerts;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>A channel that does not deliver becomes an alert of its own, which clears by itself and never keeps itself alive.</summary>
public sealed class DeliveryEvaluationTests : IAsyncLifetime
{
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 10, 6, 15, 0, 0, TimeSpan.Zero));
    private QualityLab _lab = null!;

    public async ValueTask InitializeAsync() => _lab = await QualityLab.CreateAsync(_time);

    public ValueTask DisposeAsync() => _lab.DisposeAsync();

    [Fact]
    public async Task Deliveries_OwedForTenMinutes_RaiseOneAlertThatClearsWhenTheyAreDelivered()
    {
        var alertId = await AddAlertAsync();
        await OweAsync(alertId, "mail");
        await EvaluateAsync();
        Assert.Empty(await FailingAsync());
        _time.Advance(TimeSpan.FromMinutes(10));

        await EvaluateAsync();
        await EvaluateAsync();
        var failing = Assert.Single(await FailingAsync());
        Assert.Equal((AlertLevels.Hold, AlertStates.Open, 1), (failing.Level, failing.State, failing.TimesRaised));
        Assert.Contains("connection refused", failing.Headline, StringComparison.Ordinal);
        await OweAsync(failing.AlertId, "mail");
        await DeliverAsync(alertId);
        _time.Advance(TimeSpan.FromMinutes(20));
        await EvaluateAsync();

        Assert.Equal(AlertStates.Cleared, Assert.Single(await FailingAsync()).State);
    }

    private Task<int> AddAlertAsync() => _lab.WriteAsync(session => AlertStore.AddAsync(session, new Alert
    {
        Fingerprint = "test",
        RuleName = "test",
        Level = AlertLevels.Hold,
        Scope = "test",
        Headline = "test",
        Advice = "test",
        Facts = "{}",
        State = AlertStates.Open,
        TimesRaised = 1,
        OpenedAt = _time.GetUtcNow(),
        ChangedAt = _time.GetUtcNow(),
    }));

    private Task<int> OweAsync(int alertId, string channel) => _lab.WriteAsync(session => session.Connection.ExecuteAsync(
        """
        insert into delivery (alert_id, times_raised, event, channel, urgency, state, attempts, due_at, next_attempt_at, last_error, created_at)
        values (@alertId, 1, 'raised', @channel, 0, 'pending', 1, @now, @now, 'connection refused', @now)
        """,
        new { alertId, channel, now = _time.GetUtcNow() },
        session.Transaction));

    private Task<int> DeliverAsync(int alertId) => _lab.WriteAsync(session => session.Connection.ExecuteAsync(
        "update delivery set state = 'delivered' where alert_id = @alertId", new { alertId }, session.Transaction));

    private Task EvaluateAsync() => _lab.EvaluateAsync(_lab.Evaluation.DeliveriesAsync);

    private async Task<IEnumerable<Alert>> FailingAsync() => (await _lab.AlertsAsync()).Where(alert => alert.RuleName == "delivery failing");
}
