namespace LabPipeline.Intake.Folders;

/// <summary>Lists a drop folder. The scan is the truth about what is there; a watcher only makes it come sooner.</summary>
public static class FolderScan
{
    private static readonly EnumerationOptions Everything = new()
    {
        AttributesToSkip = 0,
        IgnoreInaccessible = false,
        RecurseSubdirectories = false,
    };

    /// <summary>Every entry that may concern us, by name; temporary and hidden names are left alone.</summary>
    /// <exception cref="DirectoryNotFoundException">The folder is gone.</exception>
    public static IReadOnlyList<SeenFile> List(DropFolder folder)
    {
        var seen = new List<SeenFile>();
        foreach (var entry in new DirectoryInfo(folder.Path).EnumerateFileSystemInfos("*", Everything))
        {
            if (!FileNames.IsIgnored(entry.Name) && Look(entry, folder) is { } file)
            {
                seen.Add(file);
            }
        }

        seen.Sort((one, other) => string.CompareOrdinal(one.Name, other.Name));
        return seen;
    }

    /// <summary>What a listed entry is; null when it left between listing and looking (the next scan tells), or is no business of ours.</summary>
    public static SeenFile? Look(FileSystemInfo entry, DropFolder folder)
    {
        // First of all: an entry that left has every attribute there is, that of a link among them.
        if (!entry.Exists)
        {
            return null;
        }

        if (entry.LinkTarget is not null || entry.Attributes.HasFlag(FileAttributes.ReparsePoint))
        {
            return new SeenFile(entry.Name, entry.FullName, 0, SeenFile.ModifiedAtOf(entry), SeenKind.Link);
        }

        if (entry is FileInfo file)
        {
            return new SeenFile(file.Name, file.FullName, file.Length, SeenFile.ModifiedAtOf(file), SeenKind.RegularFile);
        }

        return entry.FullName == folder.TakenPath || entry.FullName == folder.RefusedPath
            ? null
            : new SeenFile(entry.Name, entry.FullName, 0, SeenFile.ModifiedAtOf(entry), SeenKind.Directory);
    }
}
