using System.Runtime.CompilerServices;
using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Profiles;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Storing;

/// <summary>Takes complete files: archive first, then ledger, readings and outgoing messages of the whole batch in one transaction.</summary>
public sealed class FileIntake(LabWarehouse warehouse, FileArchive archive, TimeProvider time)
{
    /// <summary>Takes batch after batch. While one is stored the next is copied already: the one waits for the processor, the other for the disk.</summary>
    /// <param name="folder">Where the files lie.</param>
    /// <param name="batches">What is taken together.</param>
    /// <param name="alongside">What else the transaction of a batch writes.</param>
    /// <param name="cancellationToken">Ends it between two steps.</param>
    /// <returns>Of each batch the files now settled in the ledger, and those that could not be read; one that changed meanwhile is in neither.</returns>
    public async IAsyncEnumerable<TakeResult> TakeAsync(
        DropFolder folder,
        IEnumerable<IReadOnlyList<ReadyFile>> batches,
        Func<WarehouseSession, Task> alongside,
        [EnumeratorCancellation] CancellationToken cancellationToken)
    {
        using var rest = batches.GetEnumerator();
        var copying = CopyNext();
        try
        {
            while (copying is not null)
            {
                var batch = await copying.ConfigureAwait(false);
                copying = CopyNext();
                yield return new TakeResult(batch.Given, await SettleAsync(folder, batch, alongside, cancellationToken).ConfigureAwait(false), batch.Unreadable);
            }
        }
        finally
        {
            if (copying is not null)
            {
                // What it has copied is taken up again by the next look.
                await ((Task)copying).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
        }

        Task<ArchivedBatch>? CopyNext()
        {
            var batch = rest.MoveNext() ? rest.Current : null;
            return batch is null ? null : Task.Run(() => Archive(folder, batch, cancellationToken), cancellationToken);
        }
    }

    /// <summary>Stores again what the archive remembers and the warehouse does not know, in the order it came.</summary>
    /// <returns>How many arrivals were missing.</returns>
    public async Task<int> RestoreAsync(IReadOnlyCollection<(JournalEntry Entry, Profile Profile)> arrivals, CancellationToken cancellationToken) =>
        await warehouse.WriteAsync(
            async session =>
            {
                using var settling = new FileSettling(session, warehouse.Dialect, archive, [.. arrivals.Select(arrival => arrival.Entry.Sha256)]);
                var missing = new List<int>();
                foreach (var (entry, profile) in arrivals)
                {
                    if (await FileLedgerStore.HasArrivedAsync(session, entry.Sha256, entry.Folder, entry.Name, entry.ModifiedAt).ConfigureAwait(false))
                    {
                        continue;
                    }

                    var seen = new SeenFile(entry.Name, entry.Name, entry.Bytes, entry.ModifiedAt, SeenKind.RegularFile);
                    var copy = new ArchivedFile(entry.Sha256, entry.Bytes, entry.ArchivedAs);
                    missing.Add((await settling.SettleAsync(new DropFolder(entry.Folder, ""), new ReadyFile(seen, profile), copy, entry.TakenAt).ConfigureAwait(false)).ArrivalId);
                }

                if (missing.Count > 0)
                {
                    await FileLedgerStore.MarkPutAwayAsync(session, missing).ConfigureAwait(false);
                }

                return missing.Count;
            },
            cancellationToken).ConfigureAwait(false);

    private Task<List<TakenFile>> SettleAsync(
        DropFolder folder, ArchivedBatch batch, Func<WarehouseSession, Task> alongside, CancellationToken cancellationToken) => warehouse.WriteAsync(
        async session =>
        {
            await alongside(session).ConfigureAwait(false);
            using var settling = new FileSettling(session, warehouse.Dialect, archive, [.. batch.Files.Select(file => file.Copy.Sha256)]);
            await HeldFileStore.RemoveAsync(session, folder.Kind, [.. batch.Files.Select(file => file.Ready.File.Name)]).ConfigureAwait(false);
            var taken = new List<TakenFile>(batch.Files.Count);
            foreach (var (ready, copy) in batch.Files)
            {
                taken.Add(await settling.SettleAsync(folder, ready, copy, batch.TakenAt).ConfigureAwait(false));
            }

            return taken;
        },
        cancellationToken);

    private ArchivedBatch Archive(DropFolder folder, IReadOnlyList<ReadyFile> files, CancellationToken cancellationToken)
    {
        var batch = Copy(files, time.GetUtcNow(), cancellationToken);
        if (batch.Files.Count > 0)
        {
            archive.Note(folder, batch.Files, batch.TakenAt);
            archive.Settle(batch.TakenAt);
        }

        return batch;
    }

    private ArchivedBatch Copy(IReadOnlyList<ReadyFile> files, DateTimeOffset now, CancellationToken cancellationToken)
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
            return new ArchivedBatch(files.Count, [.. drafts.Zip(kept, (entry, copy) => (entry.Ready, copy))], unreadable, now);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // They were flushed together, and so it is none of them that failed, but the disk.
            return new ArchivedBatch(files.Count, [], [.. unreadable, .. drafts.Select(entry => Unreadable(entry.Ready, exception))], now);
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
}
