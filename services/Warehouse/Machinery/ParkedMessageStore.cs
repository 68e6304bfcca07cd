using System.Globalization;

namespace LabPipeline.Warehouse.Machinery;

/// <summary>Messages that could not be handled. Nothing is deleted: a replayed one keeps its row, and one that was handled after all no longer counts.</summary>
public sealed class ParkedMessageStore
{
    private static readonly SqlText Update = SqlText.Load<ParkedMessageStore>("update-parked-message");
    private static readonly SqlText Insert = SqlText.Load<ParkedMessageStore>("insert-parked-message");
    private static readonly SqlText List = SqlText.Load<ParkedMessageStore>("list-parked-messages");
    private static readonly SqlText MarkReplayed = SqlText.Load<ParkedMessageStore>("mark-parked-message-replayed");

    /// <summary>Parks <paramref name="message"/>; parked before for the same endpoint, it is the same row with its newest reason.</summary>
    public static async Task ParkAsync(WarehouseSession session, ParkedMessage message)
    {
        if (await session.ExecuteAsync(Update, message).ConfigureAwait(false) == 0)
        {
            await session.ExecuteAsync(Insert, message).ConfigureAwait(false);
        }
    }

    /// <summary>Those that wait, the oldest first.</summary>
    public static Task<IReadOnlyList<ParkedMessage>> ListAsync(WarehouseSession session) => session.QueryAsync<ParkedMessage>(List);

    /// <summary>Puts <paramref name="message"/> back into the outbox under its own identifier, and notes who did it and why.</summary>
    public static async Task ReplayAsync(WarehouseSession session, ParkedMessage message, string who, string why, DateTimeOffset now)
    {
        await session.ExecuteAsync(MarkReplayed, new { message.ParkedId, at = now }).ConfigureAwait(false);
        await OutboxStore.SendAgainAsync(session, message.MessageId, message.Type, message.Body, now).ConfigureAwait(false);
        var change = new Change { At = now, Who = who, What = "message replayed", Subject = SubjectOf(message.ParkedId), Why = why };
        await ChangeLogStore.AddAsync(session, change).ConfigureAwait(false);
    }

    /// <summary>The name of a parked message in the change log.</summary>
    public static string SubjectOf(int parkedId) => string.Create(CultureInfo.InvariantCulture, $"parked-message:{parkedId}");
}
