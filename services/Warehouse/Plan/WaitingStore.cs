using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan.Rows;

namespace LabPipeline.Warehouse.Plan;

/// <summary>Readings that arrived before the plan of their samples.</summary>
internal sealed class WaitingStore
{
    private static readonly SqlText ListJoined = SqlText.Load<WaitingStore>("list-barcodes-with-readings");
    private static readonly SqlText ListFiles = SqlText.Load<WaitingStore>("list-waiting-files-of-trial");
    private static readonly SqlText ReleaseFile = SqlText.Load<WaitingStore>("release-waiting-file");

    /// <summary>Those of <paramref name="samples"/> that have readings already.</summary>
    public static async Task<IReadOnlyList<string>> JoinedBarcodesAsync(WarehouseSession session, string trialCode, IReadOnlyList<SampleRow> samples)
    {
        if (samples.Count == 0)
        {
            return [];
        }

        var fresh = samples.Select(sample => sample.Barcode).ToHashSet(StringComparer.Ordinal);
        var measured = await session.QueryAsync<string>(ListJoined, new { trialCode }).ConfigureAwait(false);
        return [.. measured.Where(fresh.Contains)];
    }

    /// <summary>Waiting files with readings of the trial.</summary>
    public static Task<IReadOnlyList<WaitingFileRow>> WaitingFilesAsync(WarehouseSession session, string trialCode) =>
        session.QueryAsync<WaitingFileRow>(ListFiles, new { trialCode });

    /// <summary>Makes those of <paramref name="files"/> stored whose samples are all registered now.</summary>
    public static async Task<IReadOnlyList<int>> ReleaseAsync(
        WarehouseSession session, IReadOnlyList<WaitingFileRow> files, string trialCode, DateTimeOffset now, string who)
    {
        var released = new List<int>();
        foreach (var file in files)
        {
            if (await session.ExecuteAsync(ReleaseFile, new { file.FileId }).ConfigureAwait(false) == 1)
            {
                released.Add(file.FileId);
                await ChangeLogStore.AddAsync(session, new Change
                {
                    At = now,
                    Who = who,
                    What = "file joined",
                    Subject = "file:" + file.Sha256,
                    Why = $"the plan of trial {trialCode} registered its last waiting sample",
                }).ConfigureAwait(false);
            }
        }

        return released;
    }
}
