using LabPipeline.Intake.Archive;
using LabPipeline.Intake.Folders;
using LabPipeline.Intake.Reading;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Dialects;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Intake.Storing;

/// <summary>Settles archived files in the ledger, one after another inside one transaction: readings, what is parked, and what other services are told.</summary>
/// <remarks>Each file is all in or not at all: a savepoint stands before its readings, and one fault takes them back.</remarks>
internal sealed class FileSettling(WarehouseSession session, IWarehouseDialect dialect, FileArchive archive, IReadOnlyCollection<string> hashes) : IDisposable
{
    // Below this a file is read faster than a second thread starts.
    private const long WorthTwoThreads = 1024 * 1024;

    private readonly IFactLoader _loader = dialect.CreateFactLoader(session);
    private Dictionary<string, SourceFile>? _known;

    public void Dispose() => _loader.Dispose();

    /// <param name="folder">Where the file came from.</param>
    /// <param name="ready">The file and its profile.</param>
    /// <param name="copy">Its copy in the archive, with one of the hashes announced.</param>
    /// <param name="now">When it was taken.</param>
    public async Task<TakenFile> SettleAsync(DropFolder folder, ReadyFile ready, ArchivedFile copy, DateTimeOffset now)
    {
        _known ??= (await FileLedgerStore.FindAsync(session, hashes).ConfigureAwait(false)).ToDictionary(file => file.Sha256, StringComparer.Ordinal);
        var known = _known.GetValueOrDefault(copy.Sha256);
        var open = known is null
            ? null
            : await FileLedgerStore.FindOpenArrivalAsync(session, known.FileId, folder.Kind, ready.File.Name, ready.File.ModifiedAt).ConfigureAwait(false);
        if (known is not null && (open is not null || known.State is FileState.Stored or FileState.Waiting))
        {
            // The same bytes again: a second drop, or the first one whose original could not be put away before a crash.
            var again = open?.ArrivalId ?? await NoteAsync(folder, ready, known.FileId, again: true, now).ConfigureAwait(false);
            return new TakenFile(again, ready.File, ReasonOf(known));
        }

        var entry = new LedgerEntry(folder.Kind, ready, known is null ? copy : copy with { Path = known.ArchivedAs }, known, now);
        var (file, barcodes) = await StoreAsync(entry).ConfigureAwait(false);
        _known[copy.Sha256] = file;
        await FileLedgerStore.SettleAsync(session, file).ConfigureAwait(false);
        await IntakeMessages.AddAsync(session, file, barcodes, now).ConfigureAwait(false);
        return new TakenFile(await NoteAsync(folder, ready, file.FileId, again: false, now).ConfigureAwait(false), ready.File, ReasonOf(file));
    }

    private static string? ReasonOf(SourceFile file) => file.State == FileState.Refused ? file.Reason : null;

    private async Task<(SourceFile File, FileBarcodes Barcodes)> StoreAsync(LedgerEntry entry)
    {
        const string BeforeFile = "before_file";
        var opened = await OpenAsync(entry).ConfigureAwait(false);
        await session.Transaction!.SaveAsync(BeforeFile, session.CancellationToken).ConfigureAwait(false);
        _loader.Begin(opened.FileId);
        var outcome = await ReadAsync(entry).ConfigureAwait(false);
        var complete = outcome.State == ReadState.Complete;
        if (!complete)
        {
            await session.Transaction.RollbackAsync(BeforeFile, session.CancellationToken).ConfigureAwait(false);
        }

        // An open savepoint would make every later change of the transaction dearer.
        await session.Transaction.ReleaseAsync(BeforeFile, session.CancellationToken).ConfigureAwait(false);
        return complete ? await CompleteAsync(entry, opened, outcome).ConfigureAwait(false) : (entry.Refused(opened, outcome), FileBarcodes.None);
    }

    private async Task<SourceFile> OpenAsync(LedgerEntry entry)
    {
        var opened = entry.Opened();
        if (entry.Known is null)
        {
            return opened with { FileId = await FileLedgerStore.InsertAsync(session, opened).ConfigureAwait(false) };
        }

        await FileLedgerStore.ReopenAsync(session, opened).ConfigureAwait(false);
        return opened;
    }

    private async Task<(SourceFile File, FileBarcodes Barcodes)> CompleteAsync(LedgerEntry entry, SourceFile opened, ReadOutcome outcome)
    {
        var counts = await _loader.CompleteAsync().ConfigureAwait(false);
        var parked = outcome.ParkedRows.Select(row => (row.Line, row.Fault.Describe(entry.Ready.File.Name))).ToList();
        if (entry.Known is not null || parked.Count > 0)
        {
            await FileLedgerStore.ReplaceParkedAsync(session, opened.FileId, parked).ConfigureAwait(false);
        }

        var barcodes = await _loader.ListBarcodesAsync().ConfigureAwait(false);
        var unplanned = await _loader.ListUnplannedAsync().ConfigureAwait(false);
        return (LedgerEntry.Stored(opened, outcome, counts, unplanned), barcodes);
    }

    private async Task<ReadOutcome> ReadAsync(LedgerEntry entry)
    {
        using var bytes = archive.Open(entry.Copy.Path);
        if (entry.Copy.Bytes < WorthTwoThreads)
        {
            return Read(entry, bytes, new FactSink(_loader));
        }

        var pipe = new FactPipe(_loader);
        await using (pipe.ConfigureAwait(false))
        {
            var outcome = Read(entry, bytes, pipe);
            await pipe.CompleteAsync().ConfigureAwait(false);
            return outcome;
        }
    }

    private ReadOutcome Read(LedgerEntry entry, Stream bytes, IReadingSink sink) =>
        FileReader.Read(entry.Ready.Profile, bytes, entry.Ready.File.Name, sink, ReadLimits.Default, session.CancellationToken);

    private Task<int> NoteAsync(DropFolder folder, ReadyFile ready, int fileId, bool again, DateTimeOffset now) => FileLedgerStore.InsertArrivalAsync(
        session,
        new Arrival { FileId = fileId, Folder = folder.Kind, Name = ready.File.Name, ModifiedAt = ready.File.ModifiedAt, ArrivedAt = now, Again = again });
}
