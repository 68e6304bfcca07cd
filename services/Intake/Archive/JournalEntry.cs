namespace LabPipeline.Intake.Archive;

/// <summary>One arrival as the archive itself remembers it: enough to read the file again, in its order, without the warehouse.</summary>
/// <param name="Sha256">Hash of the file's bytes.</param>
/// <param name="Bytes">Its size.</param>
/// <param name="ArchivedAs">Where the bytes lie inside the archive.</param>
/// <param name="Folder">Kind of the drop folder.</param>
/// <param name="Name">Name it arrived under.</param>
/// <param name="ModifiedAt">Time of change the file system reported.</param>
/// <param name="TakenAt">When it was taken.</param>
/// <param name="Profile">Hash of the profile document that read it.</param>
public sealed record JournalEntry(
    string Sha256, long Bytes, string ArchivedAs, string Folder, string Name, DateTimeOffset ModifiedAt, DateTimeOffset TakenAt, string Profile);
