namespace LabPipeline.Intake.Archive;

/// <summary>What the archive asks of a disk. Power loss takes whatever was not flushed: bytes of a file, and names in a folder.</summary>
public interface IArchiveDisk
{
    void CreateFolder(string folder);

    /// <summary>A new file, open for writing.</summary>
    Stream Create(string path);

    /// <summary>Makes the bytes written to a file of <see cref="Create"/> durable.</summary>
    void Flush(Stream file);

    /// <summary>Makes the names in a folder durable.</summary>
    void FlushFolder(string folder);

    /// <summary>Renames a file; one that has the new name is replaced.</summary>
    void Move(string from, string to);

    /// <summary>Deletes a file, if it is there.</summary>
    void Delete(string path);

    Stream Open(string path);
}
