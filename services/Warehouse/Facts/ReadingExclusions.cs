using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Facts;

/// <summary>Readings that a person sets aside with a reason: they no longer count, and a re-export does not bring them back.</summary>
public sealed class ReadingExclusions
{
    private static readonly SqlText Find = SqlText.Load<ReadingExclusions>("list-readings-to-set-aside");
    private static readonly SqlText SetAside = SqlText.Load<ReadingExclusions>("set-reading-aside");
    private static readonly SqlText Insert = SqlText.Load<ReadingExclusions>("insert-reading-exclusion");

    /// <param name="session">Where to write.</param>
    /// <param name="barcode">The sample.</param>
    /// <param name="quantityId">The quantity to set aside.</param>
    /// <param name="extract">Only this extract; null for all.</param>
    /// <param name="who">Who decides it.</param>
    /// <param name="why">The physical reason.</param>
    /// <param name="now">When.</param>
    /// <returns>How many readings were set aside.</returns>
    public static async Task<int> SetAsideAsync(
        WarehouseSession session, string barcode, int quantityId, string? extract, string who, string why, DateTimeOffset now)
    {
        var readings = await session.QueryAsync<long>(Find, new { barcode, quantityId, extract }).ConfigureAwait(false);
        foreach (var readingId in readings)
        {
            await session.ExecuteAsync(SetAside, new { readingId }).ConfigureAwait(false);
            await session.ExecuteAsync(Insert, new { readingId, now, who, why }).ConfigureAwait(false);
            await ChangeLogStore.AddAsync(session, new Change
            {
                At = now,
                Who = who,
                What = "reading set aside",
                Subject = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"reading:{readingId}"),
                Why = why,
            }).ConfigureAwait(false);
        }

        if (readings.Count > 0)
        {
            await ChangedSamples.TellAsync(session, [barcode], $"readings set aside: {why}", $"set aside|{barcode}|{quantityId}|{extract}", now).ConfigureAwait(false);
        }

        return readings.Count;
    }
}
