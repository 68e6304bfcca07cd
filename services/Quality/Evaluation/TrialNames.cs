using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Which trials the warehouse knows.</summary>
public static class TrialNames
{
    public static async Task<bool> ExistsAsync(WarehouseSession session, string trialCode) =>
        (await TrialStore.ListSettingsAsync(session).ConfigureAwait(false)).ContainsKey(trialCode);
}
