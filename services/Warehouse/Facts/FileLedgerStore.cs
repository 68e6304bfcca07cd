namespace LabPipeline.Warehouse.Facts;

/// <summary>The ledger of contents and arrivals: every complete file ends here as exactly one of its states.</summary>
public sealed class FileLedgerStore
{
    // SQL Server takes 2,100 in a statement.
    private const int ArrivalsAtOnce = 1000;

    private static readonly SqlText FindByHash = SqlText.Load<FileLedgerStore>("find-source-files");
    private static readonly SqlText Insert = SqlText.Load<FileLedgerStore>("insert-source-file");
    private static readonly SqlText Reopen = SqlText.Load<FileLedgerStore>("reopen-source-file");
    private static readonly SqlText Settle = SqlText.Load<FileLedgerStore>("settle-source-file");
    private static readonly SqlText FindOpenArrival = SqlText.Load<FileLedgerStore>("find-open-arrival");
    private static readonly SqlText CountArrived = SqlText.Load<FileLedgerStore>("count-arrived");
    private static readonly SqlText ListFiles = SqlText.Load<FileLedgerStore>("list-source-files");
    private static readonly SqlText InsertArrival = SqlText.Load<FileLedgerStore>("insert-arrival");
    private static readonly SqlText MarkPutAway = SqlText.Load<FileLedgerStore>("mark-arrivals-put-away");
    private static readonly SqlText ListOpenArrivals = SqlText.Load<FileLedgerStore>("list-open-arrivals");
    private static readonly SqlText InsertParked = SqlText.Load<FileLedgerStore>("insert-parked-row");
    private static readonly SqlText DeleteParked = SqlText.Load<FileLedgerStore>("delete-parked-rows");
    private static readonly SqlText ListBarcodes = SqlText.Load<FileLedgerStore>("list-file-barcodes");
    private static readonly SqlText ListUnplanned = SqlText.Load<FileLedgerStore>("list-unplanned-barcodes");

    /// <summary>Those of the contents with these hashes that are known.</summary>
    public static Task<IReadOnlyList<SourceFile>> FindAsync(WarehouseSession session, IReadOnlyCollection<string> hashes) =>
        session.QueryAsync<SourceFile>(FindByHash, new { hashes });

    /// <summary>Adds a content before it is read; <see cref="SettleAsync"/> says what came of it.</summary>
    /// <returns>The new file's identifier.</returns>
    public static Task<int> InsertAsync(WarehouseSession session, SourceFile file) => session.ScalarAsync<int>(Insert, file)!;

    /// <summary>Says how a content known already is read this time.</summary>
    public static Task ReopenAsync(WarehouseSession session, SourceFile file) => session.ExecuteAsync(Reopen, file);

    /// <summary>Writes down what came of reading a file: state, reason and counts.</summary>
    public static Task SettleAsync(WarehouseSession session, SourceFile file) => session.ExecuteAsync(Settle, file);

    /// <summary>The arrival of this very file that was committed before its original could be put away, if there is one.</summary>
    public static Task<Arrival?> FindOpenArrivalAsync(WarehouseSession session, int fileId, string folder, string name, DateTimeOffset modifiedAt) =>
        session.FirstOrDefaultAsync<Arrival>(FindOpenArrival, new { fileId, folder, name, modifiedAt });

    /// <summary>Whether this content arrived under that name, put away or not.</summary>
    public static async Task<bool> HasArrivedAsync(WarehouseSession session, string sha256, string folder, string name, DateTimeOffset modifiedAt) =>
        await session.ScalarAsync<int>(CountArrived, new { sha256, folder, name, modifiedAt }).ConfigureAwait(false) > 0;

    /// <summary>Some files of the ledger in its order, those after <paramref name="after"/>.</summary>
    public static Task<IReadOnlyList<SourceFile>> ListAsync(WarehouseSession session, int after, int most) =>
        session.QueryAsync<SourceFile>(ListFiles, new { after, most });

    /// <returns>The new arrival's identifier.</returns>
    public static Task<int> InsertArrivalAsync(WarehouseSession session, Arrival arrival) => session.ScalarAsync<int>(InsertArrival, arrival)!;

    public static async Task MarkPutAwayAsync(WarehouseSession session, IReadOnlyCollection<int> arrivalIds)
    {
        foreach (var some in arrivalIds.Chunk(ArrivalsAtOnce))
        {
            await session.ExecuteAsync(MarkPutAway, new { arrivalIds = some }).ConfigureAwait(false);
        }
    }

    public static Task<IReadOnlyList<Arrival>> ListOpenArrivalsAsync(WarehouseSession session, string folder) =>
        session.QueryAsync<Arrival>(ListOpenArrivals, new { folder });

    public static async Task ReplaceParkedAsync(WarehouseSession session, int fileId, IEnumerable<(int Line, string Reason)> rows)
    {
        await session.ExecuteAsync(DeleteParked, new { fileId }).ConfigureAwait(false);
        foreach (var (line, reason) in rows)
        {
            await session.ExecuteAsync(InsertParked, new { fileId, line, reason }).ConfigureAwait(false);
        }
    }

    /// <summary>Barcodes with readings, new or contested, that came with this file.</summary>
    public static Task<IReadOnlyList<string>> ListBarcodesAsync(WarehouseSession session, int fileId, long first, long last) =>
        session.QueryAsync<string>(ListBarcodes, new { fileId, first, last });

    /// <summary>Those of the file's barcodes that are in no plan.</summary>
    public static Task<IReadOnlyList<string>> ListUnplannedAsync(WarehouseSession session, int fileId, long first, long last) =>
        session.QueryAsync<string>(ListUnplanned, new { fileId, first, last });
}
