using LabPipeline.Intake.Archive;

namespace LabPipeline.Intake.Tests.Archive;

/// <summary>The machine's own disk, which takes bytes and has no room for them when they are flushed, as a share with a quota does.</summary>
internal sealed class FullDisk : IArchiveDisk
{
    // ENOSPC and ERROR_DISK_FULL.
    private static readonly int NoRoom = OperatingSystem.IsWindows() ? unchecked((int)0x80070070) : 28;

    private readonly ArchiveDisk _disk = new();

    public void CreateFolder(string folder) => _disk.CreateFolder(folder);

    public Stream Create(string path) => _disk.Create(path);

    public Stream Append(string path) => _disk.Append(path);

    public void Flush(Stream file) => throw new IOException("No space left on device", NoRoom);

    public void FlushFolder(string folder) => _disk.FlushFolder(folder);

    public void Move(string from, string to) => _disk.Move(from, to);

    public void Delete(string path) => _disk.Delete(path);

    public Stream Open(string path) => _disk.Open(path);

    public IReadOnlyList<string> List(string folder) => _disk.List(folder);
}
