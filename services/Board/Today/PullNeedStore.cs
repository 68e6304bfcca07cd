using LabPipeline.Warehouse;

namespace LabPipeline.Board.Today;

/// <summary>What every sample of a pull should have.</summary>
public sealed class PullNeedStore
{
    private static readonly SqlText List = SqlText.Load<PullNeedStore>("list-pull-gaps");

    public static Task<IReadOnlyList<SampleNeed>> ListAsync(WarehouseSession session, string trialCode, int pullNo) =>
        session.QueryAsync<SampleNeed>(List, new { trialCode, pullNo });
}
