using System.Globalization;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;

namespace LabPipeline.Warehouse.Tests.Facts;

/// <summary>A key counts once, its first value stays, and what contradicts it is kept beside it once: promise P2, in every database.</summary>
public abstract class FactLoaderSuite(DialectName store)
{
    // More than a loader holds in memory at once, so that it goes the way of large files.
    private const int Large = 12_000;
    private const int Many = 17_000;

    [Fact]
    public async Task Facts_WhenNobodyHoldsTheirKeys_TakeEffectInTheirTables()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        var (_, counts) = await FactFiles.StoreAsync(
            scratch, "a", FactFiles.Reading("1", 0.052m), FactFiles.Control("1", 1.5m), FactFiles.Reading("2", 0.025m), FactFiles.Fry(130m));

        var readings = await FactFiles.ListAsync(scratch);
        Assert.Equal([("1", 0.052m, 0), ("2", 0.025m, 0)], readings.Select(row => (row.RowKey, row.Value, row.Standing)));
        Assert.Equal(new FactCounts(4, 0, 0, readings[0].Id, readings[1].Id), counts);
        Assert.Equal(1.5m, Assert.Single(await FactFiles.ListAsync(scratch, "control_check")).Value);
        Assert.Equal(130m, Assert.Single(await FactFiles.ListAsync(scratch, "fry_batch")).Value);
    }

    [Fact]
    public async Task Facts_WhenTheyComeAgain_AreCountedAndNotStored()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        NewFact[] facts = [FactFiles.Reading("1", 0.052m), FactFiles.Control("1", 1.5m), FactFiles.Fry(130m)];
        await FactFiles.StoreAsync(scratch, "a", facts);

        var (_, counts) = await FactFiles.StoreAsync(scratch, "b", facts);

        Assert.Equal(new FactCounts(0, 3, 0, null, null), counts);
        Assert.Single(await FactFiles.ListAsync(scratch));
    }

    [Fact]
    public async Task Keys_WhenTheyAreNumbersWrittenInSeveralWays_StayDifferentAndReadBackAsWritten()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        string[] keys = ["7", "07", "7.0", "-7", "+7", "0", "00", "999999999999999999", "1000000000000000000", "7|A"];

        var (_, counts) = await FactFiles.StoreAsync(scratch, "a", keys.Select(key => FactFiles.Reading(key, 0.052m)));
        var (_, again) = await FactFiles.StoreAsync(scratch, "b", keys.Select(key => FactFiles.Reading(key, 0.052m)));

        Assert.Equal((keys.Length, keys.Length), (counts.New, again.Repeated));
        Assert.Equal(keys, (await FactFiles.ListAsync(scratch)).Select(row => row.RowKey));
    }

    [Fact]
    public async Task Fact_WhenItContradictsOneInEffect_IsContestedOnceHoweverOftenItComes()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", 0.052m));

        var (_, second) = await FactFiles.StoreAsync(scratch, "b", FactFiles.Reading("1", 0.025m));
        var (_, third) = await FactFiles.StoreAsync(scratch, "c", FactFiles.Reading("1", 0.025m), FactFiles.Reading("1", 0.052m));

        Assert.Equal((0, 0, 1), (second.New, second.Repeated, second.Conflicting));
        Assert.Equal((0, 2, 0), (third.New, third.Repeated, third.Conflicting));
        Assert.Equal([("a", 0.052m, 0), ("b", 0.025m, 1)], (await FactFiles.ListAsync(scratch)).Select(row => (row.File, row.Value, row.Standing)));
    }

    [Fact]
    public async Task Facts_WhenOneFileContradictsItself_LetTheFirstTakeEffect()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        var (_, counts) = await FactFiles.StoreAsync(
            scratch,
            "a",
            FactFiles.Reading("1", 3m) with { Line = 2 },
            FactFiles.Reading("1", 1m) with { Line = 3 },
            FactFiles.Reading("1", 3m) with { Line = 4 },
            FactFiles.Reading("1", 1m) with { Line = 5 },
            FactFiles.Reading("1", 2m) with { Line = 6 });

        Assert.Equal((1, 2, 2), (counts.New, counts.Repeated, counts.Conflicting));
        Assert.Equal([(2, 3m, 0), (3, 1m, 1), (6, 2m, 1)], (await FactFiles.ListAsync(scratch)).Select(row => (row.Line, row.Value, row.Standing)));
    }

    [Fact]
    public async Task Fact_WhenItsKeyWasSetAside_IsKeptOut()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", 0.052m));
        await FactFiles.StandAsync(scratch, "1", Standing.SetAside);

        var (_, counts) = await FactFiles.StoreAsync(scratch, "b", FactFiles.Reading("1", 0.052m), FactFiles.Reading("1", 0.025m));

        Assert.Equal((0, 1, 1), (counts.New, counts.Repeated, counts.Conflicting));
    }

    [Theory]
    [InlineData(Standing.TakenOut)]
    [InlineData(Standing.Superseded)]
    public async Task Fact_WhenItsKeyNoLongerCounts_TakesEffectAgain(Standing before)
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", 0.052m));
        await FactFiles.StandAsync(scratch, "1", before);

        var (_, counts) = await FactFiles.StoreAsync(scratch, "b", FactFiles.Reading("1", 0.052m));

        Assert.Equal((1, 0, 0), (counts.New, counts.Repeated, counts.Conflicting));
    }

    [Fact]
    public async Task Reading_WhenTheSameRowNowNamesAnotherSample_IsContested()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await FactFiles.StoreAsync(scratch, "a", FactFiles.Reading("1", 0.052m));

        var (_, counts) = await FactFiles.StoreAsync(scratch, "b", FactFiles.Reading("1", 0.052m, "26K70012C"));

        Assert.Equal((0, 0, 1), (counts.New, counts.Repeated, counts.Conflicting));
    }

    [Fact]
    public async Task Keys_WhenTheyDifferOnlyInCase_AreDifferent()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        var (_, counts) = await FactFiles.StoreAsync(
            scratch, "a", FactFiles.Reading("a", 1m), FactFiles.Reading("A", 1m), FactFiles.Reading("a", 1m) with { Run = "R1" });

        Assert.Equal(3, counts.New);
    }

    [Fact]
    public async Task LargeFile_WhenStored_KeepsItsOrderAndItsValues()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        var facts = Enumerable.Range(1, Large).Select(line => FactFiles.Reading($"{line}", line / 7m) with
        {
            Line = line,
            Value = decimal.Round(line / 7m, 11),
            BelowLimit = line % 2 == 0,
            MeasuredAt = line % 3 == 0 ? null : FactFiles.Now.AddTicks(line),
        }).ToList();

        var (_, counts) = await FactFiles.StoreAsync(scratch, "a", facts);
        var (_, again) = await FactFiles.StoreAsync(scratch, "b", facts.Append(FactFiles.Reading("1", 9m)));

        var rows = await FactFiles.ListAsync(scratch);
        Assert.Equal(new FactCounts(Large, 0, 0, rows[0].Id, rows[Large - 1].Id), counts);
        Assert.Equal((0, Large, 1), (again.New, again.Repeated, again.Conflicting));
        Assert.Equal(facts.Select(fact => (fact.Line, fact.Value)), rows.Take(Large).Select(row => (row.Line, row.Value)));
    }

    [Fact]
    [Shows(49)]
    public async Task LargeFile_WhenTakenBackToItsSavepoint_LeavesNothing()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);

        await scratch.Warehouse.WriteAsync(
            async session =>
            {
                await session.Transaction!.SaveAsync("before_file", session.CancellationToken);
                using (var loader = scratch.Warehouse.Dialect.CreateFactLoader(session))
                {
                    loader.Begin(1);
                    foreach (var line in Enumerable.Range(1, Large))
                    {
                        loader.Add(FactFiles.Reading($"{line}", line));
                    }
                }

                await session.Transaction.RollbackAsync("before_file", session.CancellationToken);
                await FactFiles.StoreAsync(scratch.Warehouse, session, "b", Enumerable.Range(1, Large).Select(line => FactFiles.Reading($"{line}", line)));
            },
            TestContext.Current.CancellationToken);

        Assert.All(await FactFiles.ListAsync(scratch), row => Assert.Equal("b", row.File));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Barcodes_WhenTheyAreTooManyForMemory_AreListedEachOnceInOrder(bool afterOneTakenBack)
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        List<string> barcodes = [.. Enumerable.Range(0, Many).Select(number => string.Create(CultureInfo.InvariantCulture, $"26XB{number:D5}"))];
        IReadOnlyList<NewFact> facts = [.. barcodes.Concat(barcodes).Select((barcode, row) => FactFiles.Reading($"{Many - row}", 1m, barcode))];

        var (count, rising, unplanned) = await scratch.Warehouse.WriteAsync(
            async session =>
            {
                using var loader = scratch.Warehouse.Dialect.CreateFactLoader(session);
                if (afterOneTakenBack)
                {
                    await session.Transaction!.SaveAsync("before_file", session.CancellationToken);
                    await StoreAsync(session, loader, "taken back", facts);
                    await session.Transaction.RollbackAsync("before_file", session.CancellationToken);
                }

                await StoreAsync(session, loader, "a", [FactFiles.Reading("a", 1m, "26XA00001")]);
                await StoreAsync(session, loader, "b", facts);
                var listed = await loader.ListBarcodesAsync();
                return (listed.Count, listed.Rising.ToList(), await loader.ListUnplannedAsync());
            },
            TestContext.Current.CancellationToken);

        Assert.Equal(barcodes, rising);
        Assert.Equal((Many, Many), (count, unplanned.Count));
        Assert.Equal(barcodes.Take(UnplannedBarcodes.MostNamed), unplanned.First);
    }

    private static async Task StoreAsync(WarehouseSession session, IFactLoader loader, string name, IEnumerable<NewFact> facts)
    {
        loader.Begin(await FileLedgerStore.InsertAsync(session, FactFiles.Ledger(name)));
        foreach (var fact in facts)
        {
            loader.Add(fact);
        }

        await loader.CompleteAsync();
    }
}
