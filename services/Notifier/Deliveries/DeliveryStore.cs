using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Storms;
using LabPipeline.Warehouse;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Who has been told what: one row for each alert, event and channel.</summary>
public sealed class DeliveryStore
{
    private static readonly SqlText Insert = SqlText.Load<DeliveryStore>("insert-delivery");
    private static readonly SqlText FindStanding = SqlText.Load<DeliveryStore>("find-alert-standing");
    private static readonly SqlText ListRaised = SqlText.Load<DeliveryStore>("list-raised-deliveries");
    private static readonly SqlText HoldBack = SqlText.Load<DeliveryStore>("hold-back-untried");
    private static readonly SqlText IsAnyDue = SqlText.Load<DeliveryStore>("is-any-due");
    private static readonly SqlText FindWaiting = SqlText.Load<DeliveryStore>("find-waiting");
    private static readonly SqlText FindTried = SqlText.Load<DeliveryStore>("find-tried");
    private static readonly SqlText ListDue = SqlText.Load<DeliveryStore>("list-due");
    private static readonly SqlText ReleaseClaims = SqlText.Load<DeliveryStore>("release-claims");
    private static readonly SqlText Update = SqlText.Load<DeliveryStore>("update-deliveries");

    public static Task AddAsync(WarehouseSession session, NewDelivery delivery) => session.ExecuteAsync(Insert, delivery);

    /// <summary>Makes first attempts due again that a process which has ended never finished.</summary>
    public static Task ReleaseClaimsAsync(WarehouseSession session, DateTimeOffset now) => session.ExecuteAsync(ReleaseClaims, new { now });

    public static Task<AlertStanding?> FindStandingAsync(WarehouseSession session, int alertId) =>
        session.FirstOrDefaultAsync<AlertStanding>(FindStanding, new { alertId });

    public static Task<IReadOnlyList<RaisedDelivery>> ListRaisedAsync(WarehouseSession session, int alertId, int timesRaised) =>
        session.QueryAsync<RaisedDelivery>(ListRaised, new { alertId, timesRaised });

    /// <returns>False when the delivery was tried in the meantime.</returns>
    public static async Task<bool> TryHoldBackAsync(WarehouseSession session, int deliveryId, string reason) =>
        await session.ExecuteAsync(HoldBack, new { deliveryId, reason }).ConfigureAwait(false) == 1;

    public static async Task<bool> IsAnyDueAsync(WarehouseSession session, string channel, DateTimeOffset now) =>
        await session.ScalarAsync<int>(IsAnyDue, new { channel, now }).ConfigureAwait(false) == 1;

    /// <remarks>Looking through everything that waits is dear in a storm, so it is done only when the limit is reached.</remarks>
    public static async Task<ChannelTraffic> FindTrafficAsync(WarehouseSession session, string channel, StormLimits limits, DateTimeOffset now)
    {
        var tried = await session.FirstOrDefaultAsync<TriedRow>(FindTried, new { channel, since = now - limits.Window }).ConfigureAwait(false);
        var waiting = tried!.TriedSingly < limits.ImmediateForOthers
            ? null
            : await session.FirstOrDefaultAsync<WaitingRow>(FindWaiting, new { channel, now }).ConfigureAwait(false);
        return new ChannelTraffic
        {
            TriedSingly = tried.TriedSingly,
            LastDigestAt = tried.LastDigestAt,
            OldestDueAt = waiting?.OldestDueAt,
            BlockWaits = waiting?.MostUrgent == (int)AlertLevel.Block,
        };
    }

    /// <param name="session">The claim's transaction.</param>
    /// <param name="channel">The channel to be told.</param>
    /// <param name="leastUrgent">Rows less urgent than this are left.</param>
    /// <param name="most">At most so many rows.</param>
    /// <param name="now">Rows due later are left.</param>
    public static Task<IReadOnlyList<DueDelivery>> ListDueAsync(
        WarehouseSession session, string channel, int leastUrgent, int most, DateTimeOffset now) =>
        session.QueryAsync<DueDelivery>(
            ListDue, new { channel, leastUrgent, most, now, owedBefore = now - DeliveryWatch.UndeliveredAfter });

    public static Task MarkAsync(WarehouseSession session, IReadOnlyList<int> deliveryIds, Marking marking) => session.ExecuteAsync(
        Update,
        new { deliveryIds, marking.State, marking.AttemptStep, marking.NextAttemptAt, marking.LastAttemptAt, marking.DeliveredAt, marking.Error });

    private sealed class WaitingRow
    {
        public DateTimeOffset? OldestDueAt { get; init; }

        public int? MostUrgent { get; init; }
    }

    private sealed class TriedRow
    {
        public int TriedSingly { get; init; }

        public DateTimeOffset? LastDigestAt { get; init; }
    }
}
