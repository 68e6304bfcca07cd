using System.Globalization;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Tests.Facts;

namespace LabPipeline.Warehouse.Tests;

/// <summary>A write is all or nothing, and nobody writes between what it read and what it wrote: stores of every service rest on this.</summary>
public abstract class WriteSuite(DialectName store)
{
    private static readonly DateTimeOffset Now = new(2026, 1, 14, 8, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(46, 47)]
    public async Task Write_WhenSeveralProcessesReadAndThenWrite_LosesNoUpdate()
    {
        const int Each = 6;
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await scratch.Warehouse.WriteAsync(session => HeartbeatStore.BeatAsync(session, Beat(0)), Stop);
        var processes = Enumerable.Range(0, 3).Select(_ => new LabWarehouse(scratch.Warehouse.Dialect, scratch.Time)).ToList();

        await Task.WhenAll(processes.Select(process => Task.Run(async () =>
        {
            for (var turn = 0; turn < Each; turn++)
            {
                await process.WriteAsync(CountAsync, Stop);
            }
        })));

        Assert.Equal(3 * Each, (await scratch.Warehouse.ReadAsync(HeartbeatStore.ListAsync, Stop))[0].Waiting);
        processes.ForEach(process => process.Dispose());
    }

    [Fact]
    public async Task Write_WhenItFailsAtItsEnd_LeavesNothing()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        await Assert.ThrowsAsync<InvalidOperationException>(() => scratch.Warehouse.WriteAsync(
            async session =>
            {
                await FactFiles.StoreAsync(scratch.Warehouse, session, "a", [FactFiles.Reading("1", 1m)]);
                throw new InvalidOperationException("afterwards");
            },
            Stop));

        Assert.Empty(await FactFiles.ListAsync(scratch));
        Assert.Empty(await scratch.Warehouse.ReadAsync(session => ArrivalListStore.ListAsync(session, null), Stop));
    }

    [Fact]
    public async Task Write_WhenTakenBackToASavepoint_KeepsWhatCameBefore()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        await scratch.Warehouse.WriteAsync(
            async session =>
            {
                await HeartbeatStore.BeatAsync(session, Beat(1));
                await session.Transaction!.SaveAsync("before_file", Stop);
                await HeartbeatStore.BeatAsync(session, Beat(2));
                await session.Transaction.RollbackAsync("before_file", Stop);
                await session.Transaction.SaveAsync("before_file", Stop);
                await HeartbeatStore.BeatAsync(session, Beat(3) with { Service = "other" });
            },
            Stop);

        Assert.Equal([("other", 3), ("service", 1)], (await scratch.Warehouse.ReadAsync(HeartbeatStore.ListAsync, Stop)).Select(beat => (beat.Service, beat.Waiting)));
    }

    [Fact]
    public async Task Lists_WhenLongerThanOneCommandOfSqlServerTakes_AreStillFound()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var barcodes = Enumerable.Range(0, 5000).Select(number => number.ToString("D5", CultureInfo.InvariantCulture)).ToList();

        Assert.Empty(await scratch.Warehouse.ReadAsync(session => Warehouse.Results.ResultStore.ListAsync(session, barcodes), Stop));
    }

    private static async Task CountAsync(WarehouseSession session)
    {
        var beat = Assert.Single(await HeartbeatStore.ListAsync(session));
        await HeartbeatStore.BeatAsync(session, Beat(beat.Waiting + 1));
    }

    private static Heartbeat Beat(int waiting) => new() { Service = "service", StartedAt = Now, BeatAt = Now, Waiting = waiting };
}
