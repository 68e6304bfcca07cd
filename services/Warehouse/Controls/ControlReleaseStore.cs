using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Controls;

/// <summary>Releases of runs whose controls had failed.</summary>
public sealed class ControlReleaseStore
{
    private static readonly SqlText List = SqlText.Load<ControlReleaseStore>("list-control-releases");
    private static readonly SqlText Insert = SqlText.Load<ControlReleaseStore>("insert-control-release");
    private static readonly SqlText ListSamples = SqlText.Load<ControlReleaseStore>("list-samples-of-run");

    public static Task<IReadOnlyList<ControlRelease>> ListAsync(WarehouseSession session, string instrument, string run) =>
        session.QueryAsync<ControlRelease>(List, new { instrument, run });

    public static async Task AddAsync(WarehouseSession session, ControlRelease release)
    {
        await session.ExecuteAsync(Insert, release).ConfigureAwait(false);
        var subject = $"run:{release.Instrument}/{release.Run}";
        await ChangeLogStore.AddAsync(session, new Change
        {
            At = release.ReleasedAt,
            Who = release.ReleasedBy,
            What = "readings released",
            Subject = subject,
            Why = release.Why,
        }).ConfigureAwait(false);
        var samples = await session.QueryAsync<string>(ListSamples, release).ConfigureAwait(false);
        await ChangedSamples.TellAsync(session, samples, $"run {release.Run} released", subject + "|released", release.ReleasedAt).ConfigureAwait(false);
    }
}
