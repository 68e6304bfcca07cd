using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Tests.Machinery;

public abstract class HeartbeatStoreSuite(DialectName store)
{
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 8, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Heartbeat_WhenItBeatsAgain_ReplacesTheOneBefore()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var first = new Heartbeat { Service = "sugar-intake", StartedAt = Now, BeatAt = Now, Waiting = 3 };
        var second = first with { BeatAt = Now.AddSeconds(5), CaughtUpAt = Now.AddSeconds(5), Waiting = 0 };
        var other = first with { Service = "quality" };

        foreach (var beat in new[] { first, second, other })
        {
            await scratch.Warehouse.WriteAsync(session => HeartbeatStore.BeatAsync(session, beat), Stop);
        }

        Assert.Equal([other, second], await scratch.Warehouse.ReadAsync(HeartbeatStore.ListAsync, Stop));
    }
}
