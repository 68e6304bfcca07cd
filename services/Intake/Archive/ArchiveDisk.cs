namespace LabPipeline.Intake.Archive;

/// <summary>The machine's own disk.</summary>
public sealed class ArchiveDisk : IArchiveDisk
{
    private const int BufferSize = 128 * 1024;

    public void CreateFolder(string folder) => Directory.CreateDirectory(folder);

    public Stream Create(string path) => new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, 0);

    public Stream Append(string path) => new FileStream(path, FileMode.Append, FileAccess.Write, FileShare.Read, 0);

    public void Flush(Stream file) => ((FileStream)file).Flush(flushToDisk: true);

    public void FlushFolder(string folder) => DirectoryFlush.Flush(folder);

    public void Move(string from, string to) => File.Move(from, to, overwrite: true);

    public void Delete(string path) => File.Delete(path);

    public Stream Open(string path) => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, BufferSize, FileOptions.SequentialScan);

    public IReadOnlyList<string> List(string folder) => Directory.Exists(folder) ? Directory.GetFiles(folder) : [];
}
