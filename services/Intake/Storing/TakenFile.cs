using LabPipeline.Intake.Folders;

namespace LabPipeline.Intake.Storing;

/// <summary>What became of a file, committed to the warehouse; the original can be put away.</summary>
/// <param name="ArrivalId">Its arrival in the ledger.</param>
/// <param name="File">The original as it was read.</param>
/// <param name="RefusedBecause">Why it was refused; null when its content is in the warehouse.</param>
public sealed record TakenFile(int ArrivalId, SeenFile File, string? RefusedBecause);
