using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;

namespace LabPipeline.Intake.Archive;

/// <summary>Keeps every file ever taken, byte for byte, under its SHA-256; nothing here is changed or deleted again.</summary>
public sealed class FileArchive(string folder)
{
    private const int BufferSize = 128 * 1024;

    /// <summary>Copies a file into the archive and makes it durable before anything else happens to it.</summary>
    /// <returns>Null when the file changed while it was copied: it is not complete after all.</returns>
    public ArchivedFile? Take(string path, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var month = now.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture);
        var shelf = Path.Combine(folder, month);
        Directory.CreateDirectory(shelf);
        var draft = Path.Combine(shelf, Path.GetRandomFileName() + ".draft");
        try
        {
            var before = new FileInfo(path);
            var (sha256, bytes) = Copy(path, draft, cancellationToken);
            var after = new FileInfo(path);
            if (bytes != before.Length || before.Length != after.Length || before.LastWriteTimeUtc != after.LastWriteTimeUtc)
            {
                return null;
            }

            File.Move(draft, Path.Combine(shelf, sha256), overwrite: true);
            return new ArchivedFile(sha256, bytes, month + "/" + sha256);
        }
        finally
        {
            File.Delete(draft);
        }
    }

    /// <summary>Makes the names of this month's shelf durable; one call serves all files taken since the last.</summary>
    public void Settle(DateTimeOffset now) =>
        DirectoryFlush.Flush(Path.Combine(folder, now.UtcDateTime.ToString("yyyy-MM", CultureInfo.InvariantCulture)));

    public Stream Open(string archivedAs) => new FileStream(
        Path.Combine(folder, archivedAs), FileMode.Open, FileAccess.Read, FileShare.Read, BufferSize, FileOptions.SequentialScan);

    private static (string Sha256, long Bytes) Copy(string path, string draft, CancellationToken cancellationToken)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        using var source = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 0, FileOptions.SequentialScan);
        using var target = new FileStream(draft, FileMode.CreateNew, FileAccess.Write, FileShare.None, 0);
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

            target.Flush(flushToDisk: true);
            return (Convert.ToHexStringLower(hash.GetHashAndReset()), bytes);
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }
}
