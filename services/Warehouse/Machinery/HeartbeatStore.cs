namespace LabPipeline.Warehouse.Machinery;

/// <summary>Heartbeats of the services.</summary>
public sealed class HeartbeatStore
{
    private static readonly SqlText Update = SqlText.Load<HeartbeatStore>("update-heartbeat");
    private static readonly SqlText Insert = SqlText.Load<HeartbeatStore>("insert-heartbeat");
    private static readonly SqlText List = SqlText.Load<HeartbeatStore>("list-heartbeats");

    public static async Task BeatAsync(WarehouseSession session, Heartbeat beat)
    {
        if (await session.ExecuteAsync(Update, beat).ConfigureAwait(false) == 0)
        {
            await session.ExecuteAsync(Insert, beat).ConfigureAwait(false);
        }
    }

    public static Task<IReadOnlyList<Heartbeat>> ListAsync(WarehouseSession session) => session.QueryAsync<Heartbeat>(List);
}
