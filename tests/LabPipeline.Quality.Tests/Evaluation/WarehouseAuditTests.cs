using LabPipeline.Hosting.Bus;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Warehouse.Alerts;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Quality.Tests.Evaluation;

/// <summary>An audit that finds the warehouse damaged is told like any other trouble, and a clean one clears it.</summary>
public sealed class WarehouseAuditTests
{
    private readonly FakeTimeProvider _time = new(new DateTimeOffset(2026, 10, 7, 15, 0, 0, TimeSpan.Zero));

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Look_AfterAnAuditFoundFaults_BlocksUntilACleanAudit()
    {
        await using var lab = await QualityLab.CreateAsync(_time, withPlan: false);
        using var relay = new RelaySignal();
        using var watch = new PullWatch(lab.Warehouse, lab.Evaluation, relay, _time, NullLogger<PullWatch>.Instance);
        await NoteAsync(lab, WarehouseAudits.WithFaults, "7 files, 7 compared line by line, 1 faults; the first: a.csv: stored 5.3 from line 2");

        await watch.LookAsync(Token);
        await watch.LookAsync(Token);

        var alert = Assert.Single(await lab.AlertsAsync());
        Assert.Equal(("warehouse damaged", AlertLevels.Block, 1), (alert.RuleName, alert.Level, alert.TimesRaised));
        Assert.Contains("stored 5.3 from line 2", alert.Headline, StringComparison.Ordinal);

        _time.Advance(TimeSpan.FromHours(1));
        await NoteAsync(lab, WarehouseAudits.WithoutFault, "7 files, 7 compared line by line, no fault");
        await watch.LookAsync(Token);

        Assert.Equal(AlertStates.Cleared, Assert.Single(await lab.AlertsAsync()).State);
    }

    [Fact]
    public async Task Look_BeforeAnyAudit_RaisesNothing()
    {
        await using var lab = await QualityLab.CreateAsync(_time, withPlan: false);
        using var relay = new RelaySignal();
        using var watch = new PullWatch(lab.Warehouse, lab.Evaluation, relay, _time, NullLogger<PullWatch>.Instance);

        await watch.LookAsync(Token);

        Assert.Empty(await lab.AlertsAsync());
    }

    private Task NoteAsync(QualityLab lab, string what, string why)
    {
        var change = new Change { At = _time.GetUtcNow(), Who = "audit", What = what, Subject = WarehouseAudits.Subject, Why = why };
        return lab.Warehouse.WriteAsync(session => ChangeLogStore.AddAsync(session, change), Token);
    }
}
