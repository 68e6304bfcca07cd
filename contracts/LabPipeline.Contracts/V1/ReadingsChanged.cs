namespace LabPipeline.Contracts.V1;

/// <summary>Stored readings changed their standing: a file was taken out, a reading set aside, a re-export accepted.</summary>
/// <param name="SampleBarcodes">Samples whose results must be computed again.</param>
/// <param name="Why">What was done, in one line.</param>
public sealed record ReadingsChanged(IReadOnlyList<string> SampleBarcodes, string Why);
