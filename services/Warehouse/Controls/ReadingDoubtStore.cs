namespace LabPipeline.Warehouse.Controls;

/// <summary>Which readings are in doubt. It follows from controls, limits and releases and can be computed again at any time.</summary>
public sealed class ReadingDoubtStore
{
    private static readonly SqlText List = SqlText.Load<ReadingDoubtStore>("list-doubts-of-run");
    private static readonly SqlText Insert = SqlText.Load<ReadingDoubtStore>("insert-doubt");
    private static readonly SqlText Delete = SqlText.Load<ReadingDoubtStore>("delete-doubt");

    /// <summary>Makes <paramref name="doubts"/> those of a run.</summary>
    /// <returns>Samples whose readings came into doubt or out of it.</returns>
    public static async Task<IReadOnlySet<string>> ReplaceAsync(WarehouseSession session, int runId, IReadOnlyCollection<ReadingDoubt> doubts)
    {
        var stored = (await session.QueryAsync<ReadingDoubt>(List, new { runId }).ConfigureAwait(false)).ToHashSet();
        var gone = stored.Except(doubts).ToList();
        var come = doubts.Where(doubt => !stored.Contains(doubt)).ToList();
        foreach (var doubt in gone)
        {
            await session.ExecuteAsync(Delete, doubt).ConfigureAwait(false);
        }

        foreach (var doubt in come)
        {
            await session.ExecuteAsync(Insert, doubt).ConfigureAwait(false);
        }

        return gone.Concat(come).Select(doubt => doubt.Barcode).ToHashSet(StringComparer.Ordinal);
    }
}
