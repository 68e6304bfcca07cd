using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Tests.Facts;

/// <summary>Contents and arrivals come back as they were written, and open arrivals are recognised.</summary>
public abstract class FileLedgerSuite(DialectName store)
{
    private static readonly DateTimeOffset ModifiedAt = new(2026, 1, 14, 15, 29, 59, 123, 456, TimeSpan.FromHours(-6));

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task File_WhenStored_ComesBackAsItWas()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var file = FactFiles.Ledger("Zuckerwerte März 1.csv") with
        {
            Bytes = 5_000_000_000,
            State = FileState.Refused,
            Method = "oxidase 2",
            MethodFacts = """{"illuminant": "D65", "° or °C": "·"}""",
        };

        var id = await scratch.Warehouse.WriteAsync(session => FileLedgerStore.InsertAsync(session, file), Stop);

        Assert.Equal(file with { FileId = id }, await FindAsync(scratch, file.Sha256));
        var settled = file with
        {
            FileId = id,
            ReasonCode = "intake.number-format",
            Reason = "found '0,052'",
            RowCount = 3,
            NewCount = 1,
            RepeatedCount = 2,
            ConflictingCount = 4,
            ParkedCount = 5,
            FirstReadingId = 7,
            LastReadingId = 9,
        };
        await scratch.Warehouse.WriteAsync(session => FileLedgerStore.SettleAsync(session, settled), Stop);
        Assert.Equal(settled, await FindAsync(scratch, file.Sha256));
        var again = settled with { Name = "März 2.csv", TakenAt = file.TakenAt.AddDays(1), Method = null, MethodFacts = null, Profile = "other", ProfileVersion = 2 };
        await scratch.Warehouse.WriteAsync(session => FileLedgerStore.ReopenAsync(session, again), Stop);
        Assert.Equal(again, await FindAsync(scratch, file.Sha256));
        Assert.Null(await FindAsync(scratch, "0"));
    }

    [Fact]
    public async Task Arrival_WhileItsOriginalIsNotPutAway_IsRecognisedByNameAndTime()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var (file, _) = await FactFiles.StoreAsync(scratch, "a.csv", FactFiles.Reading("1", 1m));
        var arrival = new Arrival { FileId = file.FileId, Folder = "sugar", Name = "b.csv", ModifiedAt = ModifiedAt, ArrivedAt = FactFiles.Now, Again = true };
        var id = await scratch.Warehouse.WriteAsync(session => FileLedgerStore.InsertArrivalAsync(session, arrival), Stop);

        var open = await OpenAsync(scratch, file.FileId, "b.csv");
        Assert.Equal((id, true, false), (open!.ArrivalId, open.Again, open.PutAway));
        Assert.Null(await OpenAsync(scratch, file.FileId, "B.csv"));
        Assert.Equal(2, (await scratch.Warehouse.ReadAsync(session => FileLedgerStore.ListOpenArrivalsAsync(session, "sugar"), Stop)).Count);

        await scratch.Warehouse.WriteAsync(session => FileLedgerStore.MarkPutAwayAsync(session, [id]), Stop);
        Assert.Null(await OpenAsync(scratch, file.FileId, "b.csv"));
    }

    [Fact]
    public async Task PutAway_WhenMoreAreMarkedThanAStatementTakes_MarksAll()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var (file, _) = await FactFiles.StoreAsync(scratch, "a.csv", FactFiles.Reading("1", 1m));
        var arrival = new Arrival { FileId = file.FileId, Folder = "sugar", Name = "b.csv", ModifiedAt = ModifiedAt, ArrivedAt = FactFiles.Now };
        var last = await scratch.Warehouse.WriteAsync(session => FileLedgerStore.InsertArrivalAsync(session, arrival), Stop);

        await scratch.Warehouse.WriteAsync(session => FileLedgerStore.MarkPutAwayAsync(session, [.. Enumerable.Range(10, 40_000), 1, last]), Stop);

        Assert.Empty(await scratch.Warehouse.ReadAsync(session => FileLedgerStore.ListOpenArrivalsAsync(session, "sugar"), Stop));
    }

    [Fact]
    public async Task Barcodes_OfAFile_AreThoseItBroughtAndThoseInNoPlan()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var (file, counts) = await FactFiles.StoreAsync(
            scratch, "a.csv", FactFiles.Reading("1", 1m), FactFiles.Reading("2", 1m, "26K70012C"), FactFiles.Reading("3", 1m, "26K70012C"));

        foreach (var list in new[] { FileLedgerStore.ListBarcodesAsync, FileLedgerStore.ListUnplannedAsync })
        {
            Assert.Equal(
                ["26K70012C", "S26P01T03R2C"],
                await scratch.Warehouse.ReadAsync(session => list(session, file.FileId, counts.FirstReadingId!.Value, counts.LastReadingId!.Value), Stop));
        }
    }

    [Fact]
    public async Task ParkedRows_WhenReplaced_AreTheNewOnesOnly()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var (file, _) = await FactFiles.StoreAsync(scratch, "a.csv");
        await ParkAsync(scratch, file.FileId, (2, "x"), (3, "y"));
        await ParkAsync(scratch, file.FileId, (3, "z"));

        Assert.Equal(["z"], await scratch.Warehouse.ReadAsync(
            async session => (await Dapper.SqlMapper.QueryAsync<string>(session.Connection, "select reason from parked_row")).ToList(), Stop));
    }

    private static async Task<SourceFile?> FindAsync(ScratchWarehouse scratch, string sha256) =>
        (await scratch.Warehouse.ReadAsync(session => FileLedgerStore.FindAsync(session, [sha256, "1"]), Stop)).SingleOrDefault();

    private static Task<Arrival?> OpenAsync(ScratchWarehouse scratch, int fileId, string name) =>
        scratch.Warehouse.ReadAsync(session => FileLedgerStore.FindOpenArrivalAsync(session, fileId, "sugar", name, ModifiedAt), Stop);

    private static Task ParkAsync(ScratchWarehouse scratch, int fileId, params (int Line, string Reason)[] rows) =>
        scratch.Warehouse.WriteAsync(session => FileLedgerStore.ReplaceParkedAsync(session, fileId, rows), Stop);
}
