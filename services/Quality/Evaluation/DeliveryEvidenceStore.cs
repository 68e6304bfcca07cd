using LabPipeline.Quality.Rules;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>Loads what channels owe. The alert about a channel does not count: it would keep itself alive.</summary>
internal sealed class DeliveryEvidenceStore
{
    private static readonly SqlText List = SqlText.Load<DeliveryEvidenceStore>("list-owed-channels");

    public static async Task<IReadOnlyList<DeliveryEvidence>> ListAsync(WarehouseSession session, DateTimeOffset now) =>
        [.. (await session.QueryAsync<DeliveryEvidence>(List, new { ruleName = DeliveryFailingRule.RuleName }).ConfigureAwait(false)).Select(row => row with { Now = now })];
}
