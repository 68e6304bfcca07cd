using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Bench orders, every draw kept: an order that people work by never changes silently.</summary>
public sealed class BenchOrderStore
{
    private const string FirstDraw = "first draw";
    private const int BarcodesAtOnce = 400;

    private static readonly SqlText ListOrders = SqlText.Load<BenchOrderStore>("list-bench-orders");
    private static readonly SqlText ListPlaces = SqlText.Load<BenchOrderStore>("list-bench-places");
    private static readonly SqlText ListOfSamples = SqlText.Load<BenchOrderStore>("list-bench-orders-of-samples");
    private static readonly SqlText InsertOrder = SqlText.Load<BenchOrderStore>("insert-bench-order");
    private static readonly SqlText InsertPlace = SqlText.Load<BenchOrderStore>("insert-bench-place");

    /// <returns>The order in effect with its places, or null when none was drawn.</returns>
    public static async Task<BenchOrder?> FindAsync(WarehouseSession session, string trialCode, int pullNo, string kind)
    {
        ArgumentNullException.ThrowIfNull(session);
        var draws = await ListAsync(session, trialCode, pullNo, kind).ConfigureAwait(false);
        return draws.Count == 0 ? null : await WithPlacesAsync(session, draws[^1]).ConfigureAwait(false);
    }

    /// <summary>Every draw, the first to the one in effect, without places.</summary>
    public static Task<IReadOnlyList<BenchOrder>> ListAsync(WarehouseSession session, string trialCode, int pullNo, string kind)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.QueryAsync<BenchOrder>(ListOrders, new { trialCode, pullNo, kind });
    }

    /// <summary>The orders of one kind in effect, with places, that hold any of <paramref name="barcodes"/>.</summary>
    public static async Task<IReadOnlyList<BenchOrder>> ListOfSamplesAsync(WarehouseSession session, string kind, IReadOnlyCollection<string> barcodes)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(barcodes);
        var found = new List<BenchOrder>();
        foreach (var part in barcodes.Chunk(BarcodesAtOnce))
        {
            found.AddRange(await session.QueryAsync<BenchOrder>(ListOfSamples, new { kind, barcodes = part }).ConfigureAwait(false));
        }

        var orders = new List<BenchOrder>();
        foreach (var order in found.DistinctBy(order => (order.TrialCode, order.PullNo)))
        {
            orders.Add(await WithPlacesAsync(session, order).ConfigureAwait(false));
        }

        return orders;
    }

    /// <summary>Keeps <paramref name="offered"/>, whose draw number does not matter, unless it is in effect already or would replace another without a reason.</summary>
    /// <param name="session">A session that may write.</param>
    /// <param name="offered">The order with its places.</param>
    /// <param name="why">Reason for another draw than the one in effect; null or blank when there is none.</param>
    public static async Task<BenchOrderKeep> KeepAsync(WarehouseSession session, BenchOrder offered, string? why)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(offered);
        ArgumentException.ThrowIfNullOrWhiteSpace(offered.MadeBy);
        var inEffect = await FindAsync(session, offered.TrialCode, offered.PullNo, offered.Kind).ConfigureAwait(false);
        if (inEffect is null)
        {
            return await AddAsync(session, offered with { DrawNo = 1, Why = FirstDraw }).ConfigureAwait(false);
        }

        if (IsSame(inEffect, offered))
        {
            return new BenchOrderKeep(BenchOrderState.Unchanged, inEffect);
        }

        return string.IsNullOrWhiteSpace(why)
            ? new BenchOrderKeep(BenchOrderState.NeedsReason, inEffect)
            : await AddAsync(session, offered with { DrawNo = inEffect.DrawNo + 1, Why = why }).ConfigureAwait(false);
    }

    private static async Task<BenchOrderKeep> AddAsync(WarehouseSession session, BenchOrder order)
    {
        await session.ExecuteAsync(InsertOrder, order).ConfigureAwait(false);
        await session.ExecuteAsync(
            InsertPlace,
            order.Places.Select(place => new { order.TrialCode, order.PullNo, order.Kind, order.DrawNo, place.Position, place.Barcode })).ConfigureAwait(false);
        await ChangeLogStore.AddAsync(session, new Change
        {
            At = order.MadeAt,
            Who = order.MadeBy,
            What = $"bench order drawn: {order.Kind} of pull {order.PullNo}, draw {order.DrawNo}, seed {order.Seed}",
            Subject = "trial:" + order.TrialCode,
            Why = order.Why,
        }).ConfigureAwait(false);
        return new BenchOrderKeep(BenchOrderState.Kept, order);
    }

    private static async Task<BenchOrder> WithPlacesAsync(WarehouseSession session, BenchOrder order) => order with
    {
        Places = await session.QueryAsync<BenchPlace>(ListPlaces, new { order.TrialCode, order.PullNo, order.Kind, order.DrawNo }).ConfigureAwait(false),
    };

    private static bool IsSame(BenchOrder inEffect, BenchOrder offered) =>
        inEffect.Seed == offered.Seed
        && inEffect.Places.Select(place => place.Barcode).SequenceEqual(offered.Places.Select(place => place.Barcode), StringComparer.Ordinal);
}
