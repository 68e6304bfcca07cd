namespace LabPipeline.Intake.Archive;

/// <summary>What the archive asks of a disk. Power loss takes whatever was not flushed: bytes of a file, and names in a folder.</summary>
public interface IArchiveDisk
{
    void CreateFolder(string folder);

    /// <summary>A new file, open for writing.</summary>
    Stream Create(string path);

    /// <summary>A file, open for writing at its end; made when it is not there.</summary>
    Stream Append(string path);

    /// <summary>Makes the bytes written to an open file durable.</summary>
    void Flush(Stream file);

    /// <summary>Makes the bytes written to several open files durable.</summary>
    void Flush(IReadOnlyList<Stream> files)
    {
        foreach (var file in files)
        {
            Flush(file);
        }
    }

    /// <summary>Makes the names in a folder durable.</summary>
    void FlushFolder(string folder);

    /// <summary>Renames a file; one that has the new name is replaced.</summary>
    void Move(string from, string to);

    /// <summary>Deletes a file, if it is there.</summary>
    void Delete(string path);

    Stream Open(string path);

    /// <summary>Paths of the files in a folder; none when there is no such folder.</summary>
    IReadOnlyList<string> List(string folder);
}
