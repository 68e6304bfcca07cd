using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Tests.Facts;

public abstract class HeldFileStoreSuite(DialectName store)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task HeldFile_WhenPutAgain_KeepsWhenItWasFirstSeen()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var held = new HeldFile
        {
            Folder = "sugar",
            Name = "run.csv",
            Bytes = 12,
            ReasonCode = "growing",
            Reason = "still growing",
            FirstSeenAt = FactFiles.Now,
            LastSeenAt = FactFiles.Now,
        };
        await PutAsync(scratch, held);
        await PutAsync(scratch, held with { Name = "Run.csv" });
        await PutAsync(scratch, held with { Bytes = 13, FirstSeenAt = FactFiles.Now.AddHours(1), LastSeenAt = FactFiles.Now.AddHours(1) });

        Assert.Equal(
            [held with { Name = "Run.csv" }, held with { Bytes = 13, LastSeenAt = FactFiles.Now.AddHours(1) }],
            await scratch.Warehouse.ReadAsync(HeldFileStore.ListAsync, Stop));

        await scratch.Warehouse.WriteAsync(session => HeldFileStore.RemoveAsync(session, "sugar", ["run.csv"]), Stop);
        Assert.Equal("Run.csv", Assert.Single(await scratch.Warehouse.ReadAsync(HeldFileStore.ListAsync, Stop)).Name);
    }

    private static Task PutAsync(ScratchWarehouse scratch, HeldFile held) =>
        scratch.Warehouse.WriteAsync(session => HeldFileStore.PutAsync(session, held), Stop);
}
