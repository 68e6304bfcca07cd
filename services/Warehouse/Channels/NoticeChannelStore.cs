namespace LabPipeline.Warehouse.Channels;

/// <summary>Which channels there are, as the notifier that started last wrote them down.</summary>
public sealed class NoticeChannelStore
{
    private static readonly SqlText List = SqlText.Load<NoticeChannelStore>("list-notice-channels");
    private static readonly SqlText DeleteAll = SqlText.Load<NoticeChannelStore>("delete-notice-channels");
    private static readonly SqlText Insert = SqlText.Load<NoticeChannelStore>("insert-notice-channel");

    public static Task<IReadOnlyList<NoticeChannel>> ListAsync(WarehouseSession session) => session.QueryAsync<NoticeChannel>(List);

    /// <summary>Puts <paramref name="channels"/> in place of those that were.</summary>
    public static async Task ReplaceAsync(WarehouseSession session, IEnumerable<NoticeChannel> channels)
    {
        await session.ExecuteAsync(DeleteAll).ConfigureAwait(false);
        foreach (var channel in channels)
        {
            await session.ExecuteAsync(Insert, channel).ConfigureAwait(false);
        }
    }
}
