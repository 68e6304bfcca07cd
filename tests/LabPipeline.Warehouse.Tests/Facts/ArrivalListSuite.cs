using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Tests.Facts;

public abstract class ArrivalListSuite(DialectName store)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Arrivals_WithFilesStillHeld_AreListedCountedAndFoundByName()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var (file, _) = await FactFiles.StoreAsync(scratch, "a.csv", FactFiles.Reading("1", 1m));
        await scratch.Warehouse.WriteAsync(
            async session =>
            {
                await FileLedgerStore.InsertArrivalAsync(
                    session, new Arrival { FileId = file.FileId, Folder = "sugar", Name = "b.csv", ModifiedAt = FactFiles.Now, ArrivedAt = FactFiles.Now.AddMinutes(2), Again = true });
                await HeldFileStore.PutAsync(session, new HeldFile { Folder = "sugar", Name = "c.csv", FirstSeenAt = FactFiles.Now.AddMinutes(1), LastSeenAt = FactFiles.Now });
            },
            Stop);

        var all = await ReadAsync(scratch, session => ArrivalListStore.ListAsync(session, null));
        Assert.Equal([("b.csv", "duplicate"), ("c.csv", "waiting"), ("a.csv", "stored")], all.Select(row => (row.Name, row.State)));
        Assert.Equal(["c.csv", "a.csv"], (await ReadAsync(scratch, session => ArrivalListStore.ListPageAsync(session, null, 1, 5))).Select(row => row.Name));
        Assert.Equal(["c.csv"], (await ReadAsync(scratch, session => ArrivalListStore.ListPageAsync(session, "waiting", 0, 5))).Select(row => row.Name));
        Assert.Equal(
            [("duplicate", 1), ("stored", 1), ("waiting", 1)],
            (await ReadAsync(scratch, ArrivalListStore.CountAsync)).Select(count => (count.State, count.Arrivals)).Order());
        Assert.Equal(file.FileId, Assert.Single(await ReadAsync(scratch, session => ArrivalListStore.FindFilesAsync(session, "a.csv"))).FileId);
        Assert.Equal(file.FileId, Assert.Single(await ReadAsync(scratch, session => ArrivalListStore.FindFilesAsync(session, file.Sha256[..8].ToUpperInvariant()))).FileId);
        Assert.Empty(await ReadAsync(scratch, session => ArrivalListStore.FindFilesAsync(session, "A.csv")));
    }

    private static Task<IReadOnlyList<T>> ReadAsync<T>(ScratchWarehouse scratch, Func<WarehouseSession, Task<IReadOnlyList<T>>> read) =>
        scratch.Warehouse.ReadAsync(read, Stop);
}
