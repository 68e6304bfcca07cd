namespace LabPipeline.Quality.Results;

/// <summary>Everything computed from one sample's readings.</summary>
public sealed record SampleComputation(
    IReadOnlyList<SampleResult> Results, IReadOnlyList<ResultFault> Faults, IReadOnlyList<ExtractAgreement> Agreements);
