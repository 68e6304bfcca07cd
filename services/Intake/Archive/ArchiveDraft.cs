namespace LabPipeline.Intake.Archive;

/// <summary>A copied file that is not durable yet: it lies in the archive under a passing name, and goes away with it unless it is kept.</summary>
public sealed class ArchiveDraft : IDisposable
{
    private readonly IArchiveDisk _disk;
    private bool _isKept;

    internal ArchiveDraft(IArchiveDisk disk, string path, Stream content, string sha256, long bytes)
    {
        _disk = disk;
        Path = path;
        Content = content;
        Sha256 = sha256;
        Bytes = bytes;
    }

    public string Sha256 { get; }

    public long Bytes { get; }

    internal string Path { get; }

    /// <summary>Open until the draft is kept, so that it can be flushed together with others.</summary>
    internal Stream Content { get; }

    /// <summary>Gives it the name under which it stays.</summary>
    public void KeepAs(string path)
    {
        Content.Dispose();
        _disk.Move(Path, path);
        _isKept = true;
    }

    public void Dispose()
    {
        Content.Dispose();
        if (!_isKept)
        {
            _disk.Delete(Path);
        }
    }
}
