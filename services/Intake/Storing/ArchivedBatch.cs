using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;

namespace LabPipeline.Intake.Storing;

/// <summary>Files whose copies are durable and noted in the archive, not yet in the ledger.</summary>
/// <param name="Given">How many files there were.</param>
/// <param name="Files">The files with their copies.</param>
/// <param name="Unreadable">Those that could not be copied.</param>
/// <param name="TakenAt">When.</param>
internal sealed record ArchivedBatch(int Given, IReadOnlyList<(ReadyFile Ready, ArchivedFile Copy)> Files, IReadOnlyList<HeldEntry> Unreadable, DateTimeOffset TakenAt);
