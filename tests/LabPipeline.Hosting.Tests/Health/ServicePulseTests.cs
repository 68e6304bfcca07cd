using LabPipeline.Hosting.Health;
using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Time.Testing;

namespace LabPipeline.Hosting.Tests.Health;

public sealed class ServicePulseTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Pulse_WhenTheDatabaseIsAwayForAWhile_BeatsAgainAfterwards()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();
        var database = new OutageDialect(scratch.Warehouse.Dialect) { IsAway = true };
        using var warehouse = new LabWarehouse(database, TimeProvider.System);
        var (time, log) = (new FakeTimeProvider(new DateTimeOffset(2026, 1, 14, 8, 0, 0, TimeSpan.Zero)), new LogBook<ServicePulse>());
        using var pulse = new ServicePulse("quality", warehouse, time, log);
        await pulse.StartAsync(Stop);
        await log.WaitForAsync("HeartbeatDelayed quality");
        Assert.Empty(await BeatsAsync(scratch));

        database.IsAway = false;
        await Wait.UntilAsync(async () => (await BeatsAsync(scratch)).Count > 0, () => time.Advance(TimeSpan.FromSeconds(10)));

        var beat = Assert.Single(await BeatsAsync(scratch));
        Assert.Equal("quality", beat.Service);
        Assert.True(beat.BeatAt > beat.StartedAt);
        await pulse.StopAsync(Stop);
    }

    private static Task<IReadOnlyList<Heartbeat>> BeatsAsync(ScratchWarehouse scratch) => scratch.Warehouse.ReadAsync(HeartbeatStore.ListAsync, Stop);
}
