namespace LabPipeline.Warehouse.Machinery;

/// <summary>Remembers which message a consumer has handled, in the transaction of the effect: handled twice counts once.</summary>
public sealed class InboxStore
{
    private static readonly SqlText Insert = SqlText.Load<InboxStore>("insert-inbox");

    /// <returns>False when <paramref name="consumer"/> has handled the message before.</returns>
    public static async Task<bool> TryEnterAsync(WarehouseSession session, Guid messageId, string consumer, DateTimeOffset now) =>
        await session.ExecuteAsync(Insert, new { messageId, consumer, at = now }).ConfigureAwait(false) == 1;
}
