using LabPipeline.Testing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Hosting.Tests;

public sealed class LeaseEndTests
{
    private const string Lease = "pull-watch";

    private static readonly DateTimeOffset Now = new(2026, 1, 14, 15, 30, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public async Task Lease_WhenItsHolderStops_IsFreeUnlessTheDatabaseIsAway(bool isAway, bool isFree)
    {
        await using var scratch = await ScratchWarehouse.CreateAsync();
        await TryHoldAsync(scratch.Warehouse, "one");
        var database = new OutageDialect(scratch.Warehouse.Dialect) { IsAway = isAway };
        using var warehouse = new LabWarehouse(database, TimeProvider.System);
        var log = new LogBook<LeaseEndTests>();

        await LeaseEnd.GiveBackAsync(warehouse, Lease, "one", log);

        Assert.Equal(isAway ? ["LeaseNotGivenBack pull-watch"] : [], log.Lines);
        Assert.Equal(isFree, await TryHoldAsync(scratch.Warehouse, "another"));
    }

    private static Task<bool> TryHoldAsync(LabWarehouse warehouse, string holder) =>
        warehouse.WriteAsync(session => LeaseStore.TryHoldAsync(session, Lease, holder, Now, Now.AddSeconds(30)), Stop);
}
