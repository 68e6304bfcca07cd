using LabPipeline.Quality.Results;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>What trials decided about their samples, and their calendars.</summary>
internal sealed class TrialStore
{
    private const int BarcodesAtOnce = 400;

    private static readonly SqlText ListSettings = SqlText.Load<TrialStore>("list-trial-settings");
    private static readonly SqlText ListPulls = SqlText.Load<TrialStore>("list-planned-pulls");
    private static readonly SqlText ListPullsOfSamples = SqlText.Load<TrialStore>("list-pulls-of-samples");

    public static async Task<IReadOnlyDictionary<string, TrialSettings>> ListSettingsAsync(WarehouseSession session) =>
        (await session.QueryAsync<TrialSettings>(ListSettings).ConfigureAwait(false)).ToDictionary(trial => trial.TrialCode, StringComparer.Ordinal);

    public static Task<IReadOnlyList<PlannedPull>> ListPullsAsync(WarehouseSession session) => session.QueryAsync<PlannedPull>(ListPulls);

    /// <summary>The pulls that <paramref name="barcodes"/> belong to; barcodes in no plan belong to none.</summary>
    public static async Task<IReadOnlyCollection<PullKey>> ListPullsOfAsync(WarehouseSession session, IReadOnlyCollection<string> barcodes)
    {
        var pulls = new HashSet<PullKey>();
        foreach (var part in barcodes.Chunk(BarcodesAtOnce))
        {
            pulls.UnionWith(await session.QueryAsync<PullKey>(ListPullsOfSamples, new { barcodes = part }).ConfigureAwait(false));
        }

        return pulls;
    }
}
