using LabPipeline.Warehouse;

namespace LabPipeline.Board.Bench;

/// <summary>Remembers which entries became files, so that one sent again is recognised.</summary>
public sealed class BenchEntryStore
{
    private static readonly SqlText Find = SqlText.Load<BenchEntryStore>("find-entry");
    private static readonly SqlText Insert = SqlText.Load<BenchEntryStore>("insert-entry");

    /// <returns>The file the entry became; null when it has not come yet.</returns>
    public static Task<string?> FindAsync(WarehouseSession session, Guid entryId) => session.ScalarAsync<string>(Find, new { entryId = entryId.ToString() });

    public static Task AddAsync(WarehouseSession session, BenchEntry entry, string fileName, DateTimeOffset takenAt) => session.ExecuteAsync(
        Insert, new { entryId = entry.Id.ToString(), sheet = entry.Sheet, fileName, userName = entry.By, takenAt });
}
