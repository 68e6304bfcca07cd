namespace LabPipeline.Warehouse.Plan;

/// <summary>The outcome of loading a plan.</summary>
/// <remarks>
/// <c>Differences</c>: what was corrected; of a refused plan, everything it was refused for.
/// <c>NewSamples</c>: samples registered by this load.
/// <c>JoinedBarcodes</c>: new samples whose readings were waiting.
/// <c>JoinedFileIds</c>: waiting files with readings of the trial.
/// <c>StoredFileIds</c>: those of them that wait no longer.
/// </remarks>
public sealed record PlanLoad(
    PlanLoadState State,
    IReadOnlyList<PlanDifference> Differences,
    int NewSamples,
    IReadOnlyList<string> JoinedBarcodes,
    IReadOnlyList<int> JoinedFileIds,
    IReadOnlyList<int> StoredFileIds);
