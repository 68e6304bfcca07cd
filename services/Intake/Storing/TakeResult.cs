using LabPipeline.Intake.Folders;

namespace LabPipeline.Intake.Storing;

/// <summary>What became of one batch of files.</summary>
public sealed record TakeResult(IReadOnlyList<TakenFile> Taken, IReadOnlyList<HeldEntry> Unreadable);
