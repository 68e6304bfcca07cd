namespace LabPipeline.Warehouse.Results;

/// <summary>Results of samples. They follow from readings and can be computed again at any time, so rows are replaced, not kept.</summary>
public sealed class ResultStore
{
    private const int BarcodesAtOnce = 400;

    private static readonly SqlText List = SqlText.Load<ResultStore>("list-results");
    private static readonly SqlText Insert = SqlText.Load<ResultStore>("insert-result");
    private static readonly SqlText Update = SqlText.Load<ResultStore>("update-result");
    private static readonly SqlText Delete = SqlText.Load<ResultStore>("delete-result");

    public static async Task<IReadOnlyList<SampleResultRow>> ListAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes)
    {
        var rows = new List<SampleResultRow>();
        foreach (var part in barcodes.Chunk(BarcodesAtOnce))
        {
            rows.AddRange(await session.QueryAsync<SampleResultRow>(List, new { barcodes = part }).ConfigureAwait(false));
        }

        return rows;
    }

    /// <summary>Makes <paramref name="computed"/> the results of <paramref name="barcodes"/>; rows that say the same stay untouched.</summary>
    /// <returns>How many rows were written or removed.</returns>
    public static async Task<int> ReplaceAsync(
        WarehouseSession session, IReadOnlyCollection<string> barcodes, IReadOnlyCollection<SampleResultRow> computed)
    {
        var stored = (await ListAsync(session, barcodes).ConfigureAwait(false)).ToDictionary(row => (row.Barcode, row.QuantityId));
        var changed = 0;
        foreach (var row in computed)
        {
            if (!stored.Remove((row.Barcode, row.QuantityId), out var before))
            {
                changed += await session.ExecuteAsync(Insert, row).ConfigureAwait(false);
            }
            else if (!row.SaysTheSameAs(before))
            {
                changed += await session.ExecuteAsync(Update, row).ConfigureAwait(false);
            }
        }

        foreach (var gone in stored.Values)
        {
            changed += await session.ExecuteAsync(Delete, gone).ConfigureAwait(false);
        }

        return changed;
    }
}
