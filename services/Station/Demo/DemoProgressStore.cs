using LabPipeline.Warehouse;

namespace LabPipeline.Station.Demo;

/// <summary>How far the demonstration has come, and what it left in the warehouse.</summary>
internal sealed class DemoProgressStore
{
    private static readonly SqlText Settled = SqlText.Load<DemoProgressStore>("count-settled-files");
    private static readonly SqlText Pending = SqlText.Load<DemoProgressStore>("count-pending-deliveries");
    private static readonly SqlText Summary = SqlText.Load<DemoProgressStore>("summarise-warehouse");

    public static Task<int> CountSettledAsync(WarehouseSession session) => session.ScalarAsync<int>(Settled)!;

    public static Task<int> CountPendingDeliveriesAsync(WarehouseSession session) => session.ScalarAsync<int>(Pending)!;

    public static async Task<DemoSummary> SummariseAsync(WarehouseSession session) =>
        (await session.FirstOrDefaultAsync<DemoSummary>(Summary).ConfigureAwait(false))!;
}
