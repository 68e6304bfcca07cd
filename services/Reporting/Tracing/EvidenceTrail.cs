namespace LabPipeline.Reporting.Tracing;

/// <summary>Everything behind one group of samples.</summary>
/// <param name="Id">Name of the group in reports, such as <c>E03-005</c>.</param>
/// <param name="Treatment">Treatment combination.</param>
/// <param name="PullNo">The pull.</param>
/// <param name="Barcodes">Its samples.</param>
/// <param name="Readings">Their readings, those that do not count among them.</param>
/// <param name="Changes">What was done to the files of these readings and to alerts about these samples, oldest first.</param>
public sealed record EvidenceTrail(
    string Id, string Treatment, int PullNo, IReadOnlyList<string> Barcodes, IReadOnlyList<EvidenceReading> Readings, IReadOnlyList<EvidenceChange> Changes);
