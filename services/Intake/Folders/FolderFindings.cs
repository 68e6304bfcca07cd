using LabPipeline.Intake.Storing;

namespace LabPipeline.Intake.Folders;

/// <summary>What one look at a drop folder gave.</summary>
public sealed record FolderFindings(IReadOnlyList<ReadyFile> Ready, IReadOnlyList<HeldEntry> Held, int Settling);
