namespace LabPipeline.Warehouse.Machinery;

/// <summary>A named right that one holder has for a while: scanning a folder, running a timer.</summary>
public sealed class LeaseStore
{
    private static readonly SqlText Renew = SqlText.Load<LeaseStore>("renew-lease");
    private static readonly SqlText Take = SqlText.Load<LeaseStore>("take-lease");
    private static readonly SqlText FindHolder = SqlText.Load<LeaseStore>("find-lease-holder");
    private static readonly SqlText ListHolders = SqlText.Load<LeaseStore>("list-lease-holders");
    private static readonly SqlText GiveBack = SqlText.Load<LeaseStore>("give-back-lease");

    /// <returns>True when <paramref name="holder"/> has the lease until <paramref name="expires"/>.</returns>
    public static async Task<bool> TryHoldAsync(WarehouseSession session, string name, string holder, DateTimeOffset now, DateTimeOffset expires)
    {
        var other = await session.ScalarAsync<string>(FindHolder, new { name }).ConfigureAwait(false);
        if (other is not null && other != holder && LeaseHolder.HasEnded(other))
        {
            await GiveBackAsync(session, name, other).ConfigureAwait(false);
        }

        var lease = new { name, holder, now, expires };
        return await session.ExecuteAsync(Renew, lease).ConfigureAwait(false) == 1
            || await session.ExecuteAsync(Take, lease).ConfigureAwait(false) == 1;
    }

    /// <summary>Who holds any lease now, ended or not.</summary>
    public static Task<IReadOnlyList<string>> ListHoldersAsync(WarehouseSession session, DateTimeOffset now) =>
        session.QueryAsync<string>(ListHolders, new { now });

    public static Task GiveBackAsync(WarehouseSession session, string name, string holder) =>
        session.ExecuteAsync(GiveBack, new { name, holder });
}
