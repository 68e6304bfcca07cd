namespace LabPipeline.Intake.Folders;

/// <summary>A directory entry as one scan found it.</summary>
public sealed record SeenFile(string Name, string Path, long Bytes, DateTimeOffset ModifiedAt, SeenKind Kind)
{
    /// <summary>Time of change in whole milliseconds, the precision the warehouse keeps.</summary>
    public static DateTimeOffset ModifiedAtOf(FileSystemInfo entry) =>
        DateTimeOffset.FromUnixTimeMilliseconds(new DateTimeOffset(entry.LastWriteTimeUtc, TimeSpan.Zero).ToUnixTimeMilliseconds());

    /// <summary>Whether the file at <paramref name="path"/> is this one, as far as size and time of change tell.</summary>
    public bool LiesAt(string path)
    {
        var there = new FileInfo(path);
        return there.Exists && there.Length == Bytes && ModifiedAtOf(there) == ModifiedAt;
    }
}
