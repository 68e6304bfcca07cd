namespace LabPipeline.Intake.Archive;

/// <summary>A file safely in the archive.</summary>
/// <param name="Sha256">Hash of all its bytes, in lower-case hexadecimal.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="Path">Where it lies inside the archive folder, with forward slashes.</param>
public sealed record ArchivedFile(string Sha256, long Bytes, string Path);
