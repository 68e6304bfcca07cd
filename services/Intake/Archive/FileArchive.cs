using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Storing;
using LabPipeline.Warehouse.Durability;

namespace LabPipeline.Intake.Archive;

/// <summary>Keeps every file ever taken, byte for byte, under its SHA-256; nothing here is changed or deleted again.</summary>
public sealed class FileArchive(string folder, IArchiveDisk disk)
{
    private const int BufferSize = 128 * 1024;

    private readonly ArchiveJournal _journal = new(folder, disk);
    private string? _settled;

    public FileArchive(string folder)
        : this(folder, new ArchiveDisk())
    {
    }

    /// <summary>Copies a file into the archive and makes it durable before anything else happens to it.</summary>
    /// <returns>Null when the file is not the one that was seen, or changed while it was copied: it is not complete after all.</returns>
    public ArchivedFile? Take(SeenFile file, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var shelf = ShelfOf(now);
        disk.CreateFolder(shelf);
        var draft = Path.Combine(shelf, Path.GetRandomFileName() + ".draft");
        try
        {
            var (sha256, bytes) = Copy(file.Path, draft, cancellationToken);
            CrashPoint.Passed(DurableStep.DraftWritten);
            if (bytes != file.Bytes || !file.LiesAt(file.Path))
            {
                return null;
            }

            disk.Move(draft, Path.Combine(shelf, sha256));
            CrashPoint.Passed(DurableStep.FileArchived);
            return new ArchivedFile(sha256, bytes, Path.GetFileName(shelf) + "/" + sha256);
        }
        finally
        {
            disk.Delete(draft);
        }
    }

    /// <summary>Makes the names of this month's shelf durable; one call serves all files taken since the last.</summary>
    public void Settle(DateTimeOffset now)
    {
        var shelf = ShelfOf(now);
        disk.FlushFolder(shelf);
        if (_settled != shelf)
        {
            // A shelf's own name is kept by the archive, and the archive's by the data folder; either may be new.
            disk.FlushFolder(folder);
            disk.FlushFolder(Path.GetDirectoryName(folder)!);
            _settled = shelf;
        }

        CrashPoint.Passed(DurableStep.ShelfSettled);
    }

    /// <summary>Notes the arrivals in the archive's own journal, durably.</summary>
    public void Note(DropFolder from, IReadOnlyCollection<(ReadyFile Ready, ArchivedFile Copy)> files, DateTimeOffset now) => _journal.Add(
        from.Kind,
        files.Select(file => new JournalEntry(
            file.Copy.Sha256, file.Copy.Bytes, file.Copy.Path, from.Kind, file.Ready.File.Name, file.Ready.File.ModifiedAt, now, _journal.Keep(file.Ready.Profile))),
        now);

    public Stream Open(string archivedAs) => disk.Open(Path.Combine(folder, archivedAs));

    private string ShelfOf(DateTimeOffset now) => Path.Combine(folder, now.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture));

    private (string Sha256, long Bytes) Copy(string path, string draft, CancellationToken cancellationToken)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var source = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 0, FileOptions.SequentialScan);
        using var target = disk.Create(draft);
        var buffer = ArrayPool<byte>.Shared.Rent(BufferSize);
        try
        {
            long bytes = 0;
            for (var count = source.Read(buffer); count > 0; count = source.Read(buffer))
            {
                cancellationToken.ThrowIfCancellationRequested();
                hash.AppendData(buffer, 0, count);
                target.Write(buffer, 0, count);
                bytes += count;
            }

            disk.Flush(target);
            return (Convert.ToHexStringLower(hash.GetHashAndReset()), bytes);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }
}
