using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace LabPipeline.Warehouse.Machinery;

/// <summary>Messages written in the transaction of their cause and published afterwards, so neither exists without the other.</summary>
public sealed class OutboxStore
{
    private static readonly SqlText Insert = SqlText.Load<OutboxStore>("insert-outbox");
    private static readonly SqlText ListUnpublished = SqlText.Load<OutboxStore>("list-outbox-unpublished");
    private static readonly SqlText MarkPublished = SqlText.Load<OutboxStore>("mark-outbox-published");
    private static readonly SqlText ReopenUnhandled = SqlText.Load<OutboxStore>("reopen-outbox-unhandled");
    private static readonly SqlText Reopen = SqlText.Load<OutboxStore>("reopen-outbox-message");
    private static readonly SqlText CountUnpublished = SqlText.Load<OutboxStore>("count-outbox-unpublished");
    private static readonly SqlText CountUnhandled = SqlText.Load<OutboxStore>("count-outbox-unhandled");

    /// <summary>Adds <paramref name="message"/>; its identifier is drawn from <paramref name="identity"/> so that a repeat is recognised.</summary>
    public static async Task AddAsync<TMessage>(WarehouseSession session, TMessage message, string identity, DateTimeOffset now)
        where TMessage : class
    {
        var type = typeof(TMessage).FullName!;
        await session.ExecuteAsync(
            Insert,
            new { id = IdentifierOf(type, identity), type, body = JsonSerializer.Serialize(message), at = now }).ConfigureAwait(false);
    }

    /// <param name="session">The session to read through.</param>
    /// <param name="types">Full names of the message types wanted.</param>
    /// <param name="most">How many at once.</param>
    public static Task<IReadOnlyList<OutboxMessage>> ListUnpublishedAsync(WarehouseSession session, IReadOnlyCollection<string> types, int most) =>
        session.QueryAsync<OutboxMessage>(ListUnpublished, new { types, most });

    public static Task MarkPublishedAsync(WarehouseSession session, IReadOnlyList<long> positions, DateTimeOffset now) =>
        session.ExecuteAsync(MarkPublished, new { positions, at = now });

    /// <summary>Lets messages go out again which were published but neither handled nor parked by <paramref name="consumer"/>: the in-process bus forgets at exit.</summary>
    public static Task<int> ReopenUnhandledAsync(WarehouseSession session, string type, string consumer) =>
        session.ExecuteAsync(ReopenUnhandled, new { type, consumer });

    /// <summary>Lets one message go out again under its own identifier; of a message that came from elsewhere a row is made.</summary>
    public static async Task SendAgainAsync(WarehouseSession session, Guid messageId, string type, string body, DateTimeOffset now)
    {
        await session.ExecuteAsync(Insert, new { id = messageId, type, body, at = now }).ConfigureAwait(false);
        await session.ExecuteAsync(Reopen, new { id = messageId }).ConfigureAwait(false);
    }

    public static Task<int> CountUnpublishedAsync(WarehouseSession session) => session.ScalarAsync<int>(CountUnpublished)!;

    /// <summary>How many messages <paramref name="consumer"/> has neither handled nor parked.</summary>
    public static Task<int> CountUnhandledAsync(WarehouseSession session, string type, string consumer) =>
        session.ScalarAsync<int>(CountUnhandled, new { type, consumer })!;

    private static Guid IdentifierOf(string type, string identity) =>
        new(SHA256.HashData(Encoding.UTF8.GetBytes(type + "|" + identity)).AsSpan(0, 16));
}
