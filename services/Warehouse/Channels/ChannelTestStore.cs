using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Channels;

/// <summary>Tests of channels: asked for by one program, sent and answered by the notifier.</summary>
public sealed class ChannelTestStore
{
    private static readonly SqlText Insert = SqlText.Load<ChannelTestStore>("insert-channel-test");
    private static readonly SqlText ListWaiting = SqlText.Load<ChannelTestStore>("list-waiting-channel-tests");
    private static readonly SqlText ListNewest = SqlText.Load<ChannelTestStore>("list-newest-channel-tests");
    private static readonly SqlText End = SqlText.Load<ChannelTestStore>("end-channel-test");

    /// <summary>Asks for a test; one that waits already is not asked for twice.</summary>
    public static async Task AskAsync(WarehouseSession session, string channel, string who, DateTimeOffset now)
    {
        if (await session.ExecuteAsync(Insert, new { channel, who, now }).ConfigureAwait(false) == 1)
        {
            await LogAsync(session, channel, who, "channel test asked for", "to see whether it works", now).ConfigureAwait(false);
        }
    }

    /// <summary>At most one of each channel.</summary>
    public static Task<IReadOnlyList<ChannelTest>> ListWaitingAsync(WarehouseSession session) => session.QueryAsync<ChannelTest>(ListWaiting);

    /// <summary>The newest test of every channel that was ever tested.</summary>
    public static Task<IReadOnlyList<ChannelTest>> ListNewestAsync(WarehouseSession session) => session.QueryAsync<ChannelTest>(ListNewest);

    /// <param name="session">The transaction.</param>
    /// <param name="test">A test that waits.</param>
    /// <param name="reason">Why it failed; null when it was delivered.</param>
    /// <param name="service">Who sent it.</param>
    /// <param name="now">When it ended.</param>
    public static async Task EndAsync(WarehouseSession session, ChannelTest test, string? reason, string service, DateTimeOffset now)
    {
        var state = reason is null ? ChannelTestStates.Delivered : ChannelTestStates.Failed;
        if (await session.ExecuteAsync(End, new { test.TestId, state, reason, now }).ConfigureAwait(false) == 1)
        {
            await LogAsync(session, test.Channel, service, "channel test " + state, reason ?? "taken by the channel", now).ConfigureAwait(false);
        }
    }

    private static Task LogAsync(WarehouseSession session, string channel, string who, string what, string why, DateTimeOffset now) => ChangeLogStore.AddAsync(
        session, new Change { At = now, Who = who, What = what, Subject = "channel:" + channel, Why = why });
}
