using LabPipeline.Intake.Folders;

namespace LabPipeline.Intake.Storing;

/// <summary>What became of one batch of files.</summary>
/// <param name="Files">How many there were.</param>
/// <param name="Taken">Those settled in the ledger.</param>
/// <param name="Unreadable">Those that could not be copied.</param>
public sealed record TakeResult(int Files, IReadOnlyList<TakenFile> Taken, IReadOnlyList<HeldEntry> Unreadable);
