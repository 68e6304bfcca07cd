using LabPipeline.Contracts.V1;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Machinery;

namespace LabPipeline.Warehouse.Tests.Facts;

/// <summary>Files taken out and re-exports accepted: standings change, a trail is left, nothing is deleted.</summary>
public abstract class FileCorrectionsSuite(DialectName store)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task TakeOut_OfTheFirstFile_LetsTheEarliestContestedValuesIn()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var (first, _) = await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", 1m), FactFiles.Control("1", 1m), FactFiles.Fry(130m));
        await FactFiles.StoreAsync(scratch, "b", FactFiles.Reading("1", 2m), FactFiles.Control("1", 2m), FactFiles.Fry(131m));
        await FactFiles.StoreAsync(scratch, "c", FactFiles.Reading("1", 3m));

        await scratch.Warehouse.WriteAsync(session => FileCorrections.TakeOutAsync(session, first, "lab manager", "wrong profile", FactFiles.Now), Stop);

        Assert.Equal([(1m, 4), (2m, 0), (3m, 1)], await StandingsAsync(scratch, "reading"));
        Assert.Equal([(1m, 4), (2m, 0)], await StandingsAsync(scratch, "control_check"));
        Assert.Equal([(130m, 4), (131m, 0)], await StandingsAsync(scratch, "fry_batch"));
        var file = Assert.Single(await scratch.Warehouse.ReadAsync(session => FileLedgerStore.FindAsync(session, [first.Sha256]), Stop));
        Assert.Equal((FileState.TakenOut, "Taken out by lab manager: wrong profile"), (file.State, file.Reason));
        await AssertToldAsync(scratch, first, "file taken out");
    }

    [Fact]
    public async Task Accept_OfAReExport_SupersedesWhatItContradicts()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", 1m), FactFiles.Reading("2", 1m), FactFiles.Control("1", 1m), FactFiles.Fry(130m));
        var (second, _) = await FactFiles.StoreAsync(scratch, "b", FactFiles.Reading("1", 2m), FactFiles.Reading("2", 1m), FactFiles.Control("1", 2m), FactFiles.Fry(131m));

        var accepted = await scratch.Warehouse.WriteAsync(
            session => FileCorrections.AcceptAsync(session, second, "lab manager", "typing error", FactFiles.Now), Stop);

        Assert.Equal(3, accepted);
        Assert.Equal([(1m, 2), (1m, 0), (2m, 0)], await StandingsAsync(scratch, "reading"));
        Assert.Equal([(1m, 2), (2m, 0)], await StandingsAsync(scratch, "control_check"));
        Assert.Equal([(130m, 2), (131m, 0)], await StandingsAsync(scratch, "fry_batch"));
        await AssertToldAsync(scratch, second, "re-export accepted");
    }

    private static async Task<IEnumerable<(decimal Value, int Standing)>> StandingsAsync(ScratchWarehouse scratch, string table) =>
        (await FactFiles.ListAsync(scratch, table)).Select(row => (row.Value, row.Standing));

    private static async Task AssertToldAsync(ScratchWarehouse scratch, SourceFile file, string what)
    {
        var changes = await scratch.Warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, "file:" + file.Sha256), Stop);
        Assert.Equal((what, "lab manager"), (Assert.Single(changes).What, changes[0].Who));
        Assert.Single(await scratch.Warehouse.ReadAsync(
            session => OutboxStore.ListUnpublishedAsync(session, [typeof(ReadingsChanged).FullName!], 10), Stop));
    }
}
