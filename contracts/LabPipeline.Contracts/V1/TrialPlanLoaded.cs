namespace LabPipeline.Contracts.V1;

/// <summary>A trial plan was loaded or extended; readings that waited for its samples now belong to them.</summary>
/// <param name="TrialCode">The trial.</param>
/// <param name="JoinedBarcodes">Samples that already had readings waiting.</param>
/// <param name="FileIds">Files whose barcodes were waiting and may now be whole.</param>
public sealed record TrialPlanLoaded(string TrialCode, IReadOnlyList<string> JoinedBarcodes, IReadOnlyList<int> FileIds);
