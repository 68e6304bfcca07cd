namespace LabPipeline.Intake.Folders;

/// <summary>A directory entry as one scan found it.</summary>
public sealed record SeenFile(string Name, string Path, long Bytes, DateTimeOffset ModifiedAt, SeenKind Kind);
