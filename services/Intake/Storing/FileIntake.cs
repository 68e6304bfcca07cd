using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Storing;

/// <summary>Takes complete files: archive first, then ledger, readings and outgoing messages of the whole batch in one transaction.</summary>
/// <remarks>Each file is all in or not at all: a savepoint stands before its readings, and one fault takes them back.</remarks>
public sealed class FileIntake(LabWarehouse warehouse, FileArchive archive, TimeProvider time)
{
    // Below this a file is read faster than a second thread starts.
    private const long WorthTwoThreads = 1024 * 1024;

    /// <returns>The files now settled in the ledger, and those that could not be read; one that changed meanwhile is in neither.</returns>
    public async Task<TakeResult> TakeAsync(DropFolder folder, IReadOnlyList<ReadyFile> files, CancellationToken cancellationToken)
    {
        var now = time.GetUtcNow();
        var (archived, unreadable) = Archive(files, now, cancellationToken);
        if (archived.Count == 0)
        {
            return new TakeResult([], unreadable);
        }

        archive.Note(folder, archived, now);
        archive.Settle(now);
        var settled = await warehouse.WriteAsync(
            async session =>
            {
                var taken = new List<TakenFile>(archived.Count);
                foreach (var (ready, copy) in archived)
                {
                    taken.Add(await SettleAsync(session, folder, ready, copy, now).ConfigureAwait(false));
                }

                return taken;
            },
            cancellationToken).ConfigureAwait(false);
        return new TakeResult(settled, unreadable);
    }

    /// <summary>Stores again what the archive remembers and the warehouse does not know, in the order it came.</summary>
    /// <returns>How many arrivals were missing.</returns>
    public async Task<int> RestoreAsync(IReadOnlyCollection<(JournalEntry Entry, Profile Profile)> arrivals, CancellationToken cancellationToken) =>
        await warehouse.WriteAsync(
            async session =>
            {
                var missing = new List<int>();
                foreach (var (entry, profile) in arrivals)
                {
                    if (await FileLedgerStore.HasArrivedAsync(session, entry.Sha256, entry.Folder, entry.Name, entry.ModifiedAt).ConfigureAwait(false))
                    {
                        continue;
                    }

                    var seen = new SeenFile(entry.Name, entry.Name, entry.Bytes, entry.ModifiedAt, SeenKind.RegularFile);
                    var copy = new ArchivedFile(entry.Sha256, entry.Bytes, entry.ArchivedAs);
                    missing.Add((await SettleAsync(session, new DropFolder(entry.Folder, ""), new ReadyFile(seen, profile), copy, entry.TakenAt).ConfigureAwait(false)).ArrivalId);
                }

                if (missing.Count > 0)
                {
                    await FileLedgerStore.MarkPutAwayAsync(session, missing).ConfigureAwait(false);
                }

                return missing.Count;
            },
            cancellationToken).ConfigureAwait(false);

    private (IReadOnlyList<(ReadyFile Ready, ArchivedFile Copy)> Archived, IReadOnlyList<HeldEntry> Unreadable) Archive(
        IReadOnlyList<ReadyFile> files, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var drafts = new List<(ReadyFile Ready, ArchiveDraft Draft)>(files.Count);
        var unreadable = new List<HeldEntry>();
        try
        {
            foreach (var ready in files)
            {
                try
                {
                    if (archive.Copy(ready.File, now, cancellationToken) is { } draft)
                    {
                        drafts.Add((ready, draft));
                    }
                }
                catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
                {
                    unreadable.Add(Unreadable(ready, exception));
                }
            }

            var kept = archive.Keep([.. drafts.Select(entry => entry.Draft)]);
            return ([.. drafts.Zip(kept, (entry, copy) => (entry.Ready, copy))], unreadable);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // They were flushed together, and so it is none of them that failed, but the disk.
            return ([], [.. unreadable, .. drafts.Select(entry => Unreadable(entry.Ready, exception))]);
        }
        finally
        {
            drafts.ForEach(entry => entry.Draft.Dispose());
        }
    }

    private static HeldEntry Unreadable(ReadyFile ready, Exception exception)
    {
        var verdict = FolderReview.Unreadable(ready.File, exception);
        return new HeldEntry(ready.File, verdict.ReasonCode, verdict.Reason);
    }

    private async Task<TakenFile> SettleAsync(
        WarehouseSession session, DropFolder folder, ReadyFile ready, ArchivedFile copy, DateTimeOffset now)
    {
        await HeldFileStore.RemoveAsync(session, folder.Kind, ready.File.Name).ConfigureAwait(false);
        var known = await FileLedgerStore.FindAsync(session, copy.Sha256).ConfigureAwait(false);
        var open = known is null
            ? null
            : await FileLedgerStore.FindOpenArrivalAsync(session, known.FileId, folder.Kind, ready.File.Name, ready.File.ModifiedAt).ConfigureAwait(false);
        if (known is not null && (open is not null || known.State is FileState.Stored or FileState.Waiting))
        {
            return await SettleKnownAsync(session, folder, ready, known, open, now).ConfigureAwait(false);
        }

        var entry = new LedgerEntry(folder.Kind, ready, known is null ? copy : copy with { Path = known.ArchivedAs }, known, now);
        var fileId = known?.FileId ?? await FileLedgerStore.InsertAsync(session, entry.Opened()).ConfigureAwait(false);
        var (file, barcodes) = await StoreAsync(session, entry, fileId).ConfigureAwait(false);
        await FileLedgerStore.UpdateAsync(session, file).ConfigureAwait(false);
        await IntakeMessages.AddAsync(session, file, barcodes, now).ConfigureAwait(false);
        var arrivalId = await FileLedgerStore.InsertArrivalAsync(session, ArrivalOf(folder, ready, fileId, again: false, now)).ConfigureAwait(false);
        return new TakenFile(arrivalId, ready.File, ReasonOf(file));
    }

    private static string? ReasonOf(SourceFile file) => file.State == FileState.Refused ? file.Reason : null;

    /// <summary>The same bytes again: a second drop, or the first one whose original could not be put away before a crash.</summary>
    private static async Task<TakenFile> SettleKnownAsync(
        WarehouseSession session, DropFolder folder, ReadyFile ready, SourceFile known, Arrival? open, DateTimeOffset now)
    {
        var arrivalId = open?.ArrivalId
            ?? await FileLedgerStore.InsertArrivalAsync(session, ArrivalOf(folder, ready, known.FileId, again: true, now)).ConfigureAwait(false);
        return new TakenFile(arrivalId, ready.File, ReasonOf(known));
    }

    private async Task<(SourceFile File, IReadOnlyList<string> Barcodes)> StoreAsync(WarehouseSession session, LedgerEntry entry, int fileId)
    {
        const string BeforeFile = "before_file";
        await session.Transaction!.SaveAsync(BeforeFile, session.CancellationToken).ConfigureAwait(false);
        using var loader = warehouse.Dialect.CreateFactLoader(session, fileId);
        var outcome = await ReadAsync(entry, loader, session.CancellationToken).ConfigureAwait(false);

        if (outcome.State != ReadState.Complete)
        {
            await session.Transaction.RollbackAsync(BeforeFile, session.CancellationToken).ConfigureAwait(false);
            return (entry.Refused(fileId, outcome), []);
        }

        var counts = await loader.CompleteAsync().ConfigureAwait(false);
        await FileLedgerStore.ReplaceParkedAsync(
            session, fileId, outcome.ParkedRows.Select(row => (row.Line, row.Fault.Describe(entry.Ready.File.Name)))).ConfigureAwait(false);
        var barcodes = await loader.ListBarcodesAsync().ConfigureAwait(false);
        var unplanned = await loader.ListUnplannedAsync().ConfigureAwait(false);
        return (entry.Stored(fileId, outcome, counts, unplanned), barcodes);
    }

    private async Task<ReadOutcome> ReadAsync(LedgerEntry entry, IFactLoader loader, CancellationToken cancellationToken)
    {
        using var bytes = archive.Open(entry.Copy.Path);
        if (entry.Copy.Bytes < WorthTwoThreads)
        {
            return Read(entry, bytes, new FactSink(loader), cancellationToken);
        }

        var pipe = new FactPipe(loader);
        await using (pipe.ConfigureAwait(false))
        {
            var outcome = Read(entry, bytes, pipe, cancellationToken);
            await pipe.CompleteAsync().ConfigureAwait(false);
            return outcome;
        }
    }

    private static ReadOutcome Read(LedgerEntry entry, Stream bytes, IReadingSink sink, CancellationToken cancellationToken) =>
        FileReader.Read(entry.Ready.Profile, bytes, entry.Ready.File.Name, sink, ReadLimits.Default, cancellationToken);

    private static Arrival ArrivalOf(DropFolder folder, ReadyFile ready, int fileId, bool again, DateTimeOffset now) => new()
    {
        FileId = fileId,
        Folder = folder.Kind,
        Name = ready.File.Name,
        ModifiedAt = ready.File.ModifiedAt,
        ArrivedAt = now,
        Again = again,
    };
}
