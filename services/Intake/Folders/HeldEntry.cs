namespace LabPipeline.Intake.Folders;

/// <summary>A file that stays in the folder, and why.</summary>
public sealed record HeldEntry(SeenFile File, string ReasonCode, string Reason);
