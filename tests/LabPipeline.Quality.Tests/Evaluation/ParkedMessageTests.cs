using LabPipeline.Hosting.Bus;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>A message nobody could handle is an alert until it is replayed, one for each queue.</summary>
public sealed class ParkedMessageTests
{
    private const string Queue = "notifier-qc-alert-raised";

    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 10, 7, 15, 0, 0, TimeSpan.Zero));

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(38)]
    public async Task Look_WhileMessagesAreParked_HoldsOneAlertForTheQueueAndClearsItWhenTheyAreReplayed()
    {
        await using var lab = await QualityLab.CreateAsync(_time, withPlan: false);
        using var relay = new RelaySignal();
        using var watch = new PullWatch(lab.Warehouse, lab.Evaluation, relay, _time, NullLogger<PullWatch>.Instance);
        await ParkAsync(lab, 1, "SmtpException: no such host");
        _time.Advance(TimeSpan.FromMinutes(5));
        await ParkAsync(lab, 2, "SmtpException: refused");

        await watch.LookAsync(Token);
        await watch.LookAsync(Token);

        var alert = Assert.Single(await lab.AlertsAsync());
        Assert.Equal(("parked message", "parked:" + Queue, AlertLevels.Hold, 1), (alert.RuleName, alert.Scope, alert.Level, alert.TimesRaised));
        Assert.Contains("holds 2 messages", alert.Headline, StringComparison.Ordinal);
        Assert.Contains("2026-10-07 15:00 UTC: SmtpException: no such host", alert.Headline, StringComparison.Ordinal);

        await lab.WriteAsync(async session =>
        {
            foreach (var message in await ParkedMessageStore.ListAsync(session))
            {
                await ParkedMessageStore.ReplayAsync(session, message, "technician 1", "mail server back", _time.GetUtcNow());
            }

            return true;
        });
        await watch.LookAsync(Token);

        Assert.Equal(AlertStates.Cleared, Assert.Single(await lab.AlertsAsync()).State);
        var outbox = await lab.Warehouse.ReadAsync(session => OutboxStore.ListUnpublishedAsync(session, ["test"], 10), Token);
        Assert.Equal(2, outbox.Count);
    }

    private Task ParkAsync(QualityLab lab, int number, string reason)
    {
        var message = new ParkedMessage
        {
            MessageId = new Guid(number, 0, 0, new byte[8]),
            Endpoint = Queue,
            Type = "test",
            Body = "{}",
            Reason = reason,
            ParkedAt = _time.GetUtcNow(),
        };
        return lab.Warehouse.WriteAsync(session => ParkedMessageStore.ParkAsync(session, message), Token);
    }
}
