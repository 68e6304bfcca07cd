namespace LabPipeline.Contracts.V1;

/// <summary>A file's readings were committed to the warehouse. Large files are told in several parts.</summary>
/// <param name="FileId">The file in the warehouse's ledger.</param>
/// <param name="Part">This part, counted from 1.</param>
/// <param name="Parts">How many parts the file was told in.</param>
/// <param name="SampleBarcodes">Samples with readings that are new or contested.</param>
/// <param name="NewCount">Readings of the whole file stored for the first time.</param>
/// <param name="ConflictingCount">Readings of the whole file that contradict one in effect.</param>
public sealed record ReadingsRecorded(
    int FileId, int Part, int Parts, IReadOnlyList<string> SampleBarcodes, int NewCount, int ConflictingCount);
