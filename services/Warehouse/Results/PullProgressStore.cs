namespace LabPipeline.Warehouse.Results;

/// <summary>What the plans expect against what is measured, pull by pull.</summary>
public sealed class PullProgressStore
{
    private static readonly SqlText ListTrials = SqlText.Load<PullProgressStore>("list-trial-spans");
    private static readonly SqlText List = SqlText.Load<PullProgressStore>("list-pull-progress");

    /// <summary>Every trial with pulls, the one that ends last first.</summary>
    public static Task<IReadOnlyList<TrialSpan>> ListTrialsAsync(WarehouseSession session) => session.QueryAsync<TrialSpan>(ListTrials);

    /// <summary>The expected quantities of a trial's pulls, in the order of pulls and of the quantity catalogue.</summary>
    public static Task<IReadOnlyList<PullProgress>> ListAsync(WarehouseSession session, string trialCode) =>
        session.QueryAsync<PullProgress>(List, new { trialCode });
}
