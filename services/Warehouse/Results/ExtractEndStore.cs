using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Results;

/// <summary>Samples of which no further extract can be made: the repeatability procedure ends with what there is.</summary>
public sealed class ExtractEndStore
{
    private static readonly SqlText Delete = SqlText.Load<ExtractEndStore>("delete-extract-end");
    private static readonly SqlText Insert = SqlText.Load<ExtractEndStore>("insert-extract-end");

    /// <summary>Notes that <paramref name="barcode"/> has no tissue left; a later note replaces the earlier.</summary>
    public static async Task EndAsync(WarehouseSession session, string barcode, string who, string why, DateTimeOffset now)
    {
        await session.ExecuteAsync(Delete, new { barcode }).ConfigureAwait(false);
        await session.ExecuteAsync(Insert, new { barcode, now, who, why }).ConfigureAwait(false);
        await ChangeLogStore.AddAsync(
            session, new Change { At = now, Who = who, What = "no more extracts", Subject = "sample:" + barcode, Why = why }).ConfigureAwait(false);
        await ChangedSamples.TellAsync(session, [barcode], "no more extracts", $"no more extracts|{barcode}", now).ConfigureAwait(false);
    }
}
