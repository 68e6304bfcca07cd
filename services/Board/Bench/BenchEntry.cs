namespace LabPipeline.Board.Bench;

/// <summary>A finished bench sheet as a tablet sends it, perhaps more than once and perhaps long after it was written.</summary>
/// <param name="Id">Made on the tablet; the same sheet always carries the same one.</param>
/// <param name="Sheet">One of <see cref="BenchSheet.All"/> by its name.</param>
/// <param name="By">Who was signed in when the sheet was written.</param>
/// <param name="Rows">Its rows in the order they were noted.</param>
public sealed record BenchEntry(Guid Id, string Sheet, string By, IReadOnlyList<BenchRow> Rows);
