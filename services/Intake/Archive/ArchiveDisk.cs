namespace LabPipeline.Intake.Archive;

/// <summary>The machine's own disk.</summary>
public sealed class ArchiveDisk : IArchiveDisk
{
    // Disks serve flushes that wait at the same time with one; once writing has begun four threads gain as much as sixteen, for half the processor time.
    private const int FlushesAtOnce = 4;

    public void CreateFolder(string folder) => Directory.CreateDirectory(folder);

    public Stream Create(string path) => new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, 0);

    public Stream Append(string path) => new FileStream(path, FileMode.Append, FileAccess.Write, FileShare.Read, 0);

    public void Flush(Stream file) => ((FileStream)file).Flush(flushToDisk: true);

    public void Flush(IReadOnlyList<Stream> files)
    {
        if (files.Count == 1)
        {
            Flush(files[0]);
            return;
        }

        foreach (var file in files)
        {
            EarlyWriting.Begin(((FileStream)file).SafeFileHandle);
        }

        // Threads of their own: those of the pool are few, and it does not know that these only wait.
        var flushes = Enumerable.Range(0, Math.Min(FlushesAtOnce, files.Count)).Select(first => Task.Factory.StartNew(
            () => FlushEach(files, first), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default));
        Task.WhenAll(flushes).GetAwaiter().GetResult();
    }

    public void FlushFolder(string folder) => DirectoryFlush.Flush(folder);

    public void Move(string from, string to) => File.Move(from, to, overwrite: true);

    public void Delete(string path) => File.Delete(path);

    // Unbuffered: its readers have buffers of their own.
    public Stream Open(string path) => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 0, FileOptions.SequentialScan);

    public IReadOnlyList<string> List(string folder) => Directory.Exists(folder) ? Directory.GetFiles(folder) : [];

    private void FlushEach(IReadOnlyList<Stream> files, int first)
    {
        for (var index = first; index < files.Count; index += FlushesAtOnce)
        {
            Flush(files[index]);
        }
    }
}
