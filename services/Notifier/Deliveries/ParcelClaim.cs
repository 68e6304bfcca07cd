using LabPipeline.Notifier.Messages;
using LabPipeline.Notifier.Routing;
using LabPipeline.Notifier.Storms;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Notifier.Deliveries;

/// <summary>Takes what is to be sent next, in one transaction: nobody else takes it until the claim runs out.</summary>
/// <remarks>A claim left by a crash runs out by itself; what it held is then sent again, under the same identifier.</remarks>
public static class ParcelClaim
{
    /// <summary>Longer than any attempt may take.</summary>
    public static readonly TimeSpan ClaimFor = TimeSpan.FromMinutes(2);

    public const string LeaseName = "notifier-delivery";

    private static readonly TimeSpan LeaseFor = TimeSpan.FromMinutes(1);

    private static readonly string Holder = LeaseHolder.ThisProcess;

    /// <summary>Whether this process may deliver.</summary>
    public static Task<bool> TryHoldLeaseAsync(WarehouseSession session, DateTimeOffset now) =>
        LeaseStore.TryHoldAsync(session, LeaseName, Holder, now, now + LeaseFor);

    /// <returns>Null when nothing may be sent now.</returns>
    public static async Task<Parcel?> TakeAsync(WarehouseSession session, ChannelPolicy channel, DateTimeOffset now)
    {
        if (!await TryHoldLeaseAsync(session, now).ConfigureAwait(false))
        {
            return null;
        }

        if (await DigestStore.FindDueAsync(session, channel.Name, now).ConfigureAwait(false) is { } digestId)
        {
            await DigestStore.MarkAsync(session, channel.Name, digestId, Claimed(now)).ConfigureAwait(false);
            return await DigestParcelAsync(session, channel, digestId).ConfigureAwait(false);
        }

        var verdict = channel.Storm is { } limits
            ? StormThrottle.Decide(limits, await DeliveryStore.FindTrafficAsync(session, channel.Name, limits, now).ConfigureAwait(false), now)
            : StormVerdict.OneByOne;
        return verdict switch
        {
            StormVerdict.OneByOne => await TakeSinglesAsync(session, channel, ClearingPlan.Urgency, now).ConfigureAwait(false),
            StormVerdict.BlockOnly => await TakeSinglesAsync(session, channel, (int)AlertLevel.Block, now).ConfigureAwait(false),
            StormVerdict.Digest => await StartDigestAsync(session, channel, now).ConfigureAwait(false),
            _ => null,
        };
    }

    private static async Task<Parcel?> TakeSinglesAsync(WarehouseSession session, ChannelPolicy channel, int leastUrgent, DateTimeOffset now)
    {
        while (true)
        {
            var rows = await DeliveryStore.ListDueAsync(session, channel.Name, leastUrgent, channel.BatchSize, now).ConfigureAwait(false);
            foreach (var moot in rows.Where(row => row.Moot is not null).GroupBy(row => row.Moot))
            {
                await DeliveryStore.MarkAsync(session, IdsOf(moot), HeldBack(moot.Key!, now)).ConfigureAwait(false);
            }

            var toSend = rows.Where(row => row.Moot is null).ToList();
            if (toSend.Count > 0)
            {
                await DeliveryStore.MarkAsync(session, IdsOf(toSend), Claimed(now)).ConfigureAwait(false);
                return ParcelOf(toSend);
            }

            if (rows.Count == 0)
            {
                return null;
            }
        }
    }

    private static async Task<Parcel> StartDigestAsync(WarehouseSession session, ChannelPolicy channel, DateTimeOffset now)
    {
        var digestId = NoticeIdentity.OfDigest(channel.Name, now);
        await DigestStore.StartAsync(session, channel.Name, digestId, now, Claimed(now)).ConfigureAwait(false);
        return await DigestParcelAsync(session, channel, digestId).ConfigureAwait(false);
    }

    private static async Task<Parcel> DigestParcelAsync(WarehouseSession session, ChannelPolicy channel, string digestId)
    {
        var head = await DigestStore.FindHeadAsync(session, channel.Name, digestId).ConfigureAwait(false);
        var lines = await DigestStore.ListLinesAsync(session, channel.Name, digestId).ConfigureAwait(false);
        var isOfTheDay = digestId == NoticeIdentity.OfDigest(channel.Name, head.DueAt);
        return new Parcel
        {
            Notices = [NoticeWriter.Digest(digestId, isOfTheDay ? channel.Digest?.DayOf(head.DueAt) : null, head, lines)],
            DigestId = digestId,
            Attempts = head.Attempts,
            DueAt = head.DueAt,
            Count = head.Total,
        };
    }

    private static Parcel ParcelOf(List<DueDelivery> rows) => new()
    {
        Notices = [.. rows.Select(NoticeWriter.Alert)],
        DeliveryIds = IdsOf(rows),
        Attempts = rows.Max(row => row.Attempts) + 1,
        DueAt = rows.Min(row => row.DueAt),
        Count = rows.Count,
    };

    private static IReadOnlyList<int> IdsOf(IEnumerable<DueDelivery> rows) => [.. rows.Select(row => row.DeliveryId)];

    private static Marking Claimed(DateTimeOffset now) => new()
    {
        State = DeliveryStates.Pending,
        AttemptStep = 1,
        NextAttemptAt = now + ClaimFor,
        LastAttemptAt = now,
    };

    private static Marking HeldBack(string reason, DateTimeOffset now) => new()
    {
        State = DeliveryStates.HeldBack,
        NextAttemptAt = now,
        Error = reason,
    };
}
