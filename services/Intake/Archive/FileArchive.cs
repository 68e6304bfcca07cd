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

    /// <summary>Copies a file into the archive under a passing name; <see cref="Keep"/> makes it durable.</summary>
    /// <returns>Null when the file is not the one that was seen, or changed while it was copied: it is not complete after all.</returns>
    public ArchiveDraft? Copy(SeenFile file, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var shelf = ShelfOf(now);
        disk.CreateFolder(shelf);
        var path = Path.Combine(shelf, Path.GetRandomFileName() + ".draft");
        try
        {
            var draft = Copy(file.Path, path, cancellationToken);
            if (draft.Bytes == file.Bytes && file.LiesAt(file.Path))
            {
                return draft;
            }

            draft.Dispose();
            return null;
        }
        catch
        {
            disk.Delete(path);
            throw;
        }
    }

    /// <summary>Flushes the drafts together, then puts each under its hash. Flushed one by one they would wait for the disk as often as there are files.</summary>
    public IReadOnlyList<ArchivedFile> Keep(IReadOnlyList<ArchiveDraft> drafts)
    {
        disk.Flush((IReadOnlyList<Stream>)[.. drafts.Select(draft => draft.Content)]);
        var kept = new List<ArchivedFile>(drafts.Count);
        foreach (var draft in drafts)
        {
            CrashPoint.Passed(DurableStep.DraftWritten);
            var shelf = Path.GetDirectoryName(draft.Path)!;
            draft.KeepAs(Path.Combine(shelf, draft.Sha256));
            CrashPoint.Passed(DurableStep.FileArchived);
            kept.Add(new ArchivedFile(draft.Sha256, draft.Bytes, Path.GetFileName(shelf) + "/" + draft.Sha256));
        }

        return kept;
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

    private ArchiveDraft Copy(string path, string draft, CancellationToken cancellationToken)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var source = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 0, FileOptions.SequentialScan);
        var target = disk.Create(draft);
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

            return new ArchiveDraft(disk, draft, target, Convert.ToHexStringLower(hash.GetHashAndReset()), bytes);
        }
        catch
        {
            target.Dispose();
            throw;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }
}
