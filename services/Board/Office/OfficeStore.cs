using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Board.Office;

/// <summary>The change log in parts, and channels by their deliveries.</summary>
public sealed class OfficeStore
{
    private static readonly SqlText ListChanges = SqlText.Load<OfficeStore>("list-changes-page");
    private static readonly SqlText CountChanges = SqlText.Load<OfficeStore>("count-changes");
    private static readonly SqlText ListChannels = SqlText.Load<OfficeStore>("list-channels");

    public static Task<IReadOnlyList<Change>> ListChangesAsync(WarehouseSession session, int skip, int most) =>
        session.QueryAsync<Change>(ListChanges, new { skip, most });

    public static Task<int> CountChangesAsync(WarehouseSession session) => session.ScalarAsync<int>(CountChanges);

    public static Task<IReadOnlyList<ChannelLine>> ListChannelsAsync(WarehouseSession session) => session.QueryAsync<ChannelLine>(ListChannels);
}
