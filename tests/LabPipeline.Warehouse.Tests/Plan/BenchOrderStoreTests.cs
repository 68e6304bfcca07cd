using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

public sealed class BenchOrderStoreTests : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = new(2026, 10, 5, 12, 30, 0, TimeSpan.Zero);

    private ScratchWarehouse _scratch = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _scratch = await ScratchWarehouse.CreateAsync();
        await _scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, SpecExample.Plan, Now, "field lead"), Token);
    }

    public async ValueTask DisposeAsync() => await _scratch.DisposeAsync();

    [Fact]
    public async Task KeepAsync_OfTheFirstDraw_KeepsEveryPlaceAndLogsIt()
    {
        var kept = await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 7));
        var found = await FindAsync(1, BenchOrderKinds.Analysis);

        Assert.Equal(BenchOrderState.Kept, kept.State);
        Assert.Equal((1, 7L, "bench lead", "first draw", Now), (found!.DrawNo, found.Seed, found.MadeBy, found.Why, found.MadeAt));
        Assert.Equal(Barcodes(1), found.Places.Select(place => place.Barcode));
        Assert.Equal(["1", "1", "1", "1", "2", "2", "2", "2"], found.Places.Select(place => place.Block));
        Assert.Equal(Enumerable.Range(1, 8), found.Places.Select(place => place.Position));
        Assert.Contains(await ChangesAsync(), change => change.What == "bench order drawn: analysis of pull 1, draw 1, seed 7");
        Assert.Null(await FindAsync(1, BenchOrderKinds.Frying));
        Assert.Null(await FindAsync(2, BenchOrderKinds.Analysis));
    }

    [Fact]
    public async Task KeepAsync_OfTheSameDrawAgain_ChangesNothing()
    {
        await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 7));
        var changes = (await ChangesAsync()).Count;

        var again = await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 7) with { MadeBy = "somebody else" }, "no need");

        Assert.Equal((BenchOrderState.Unchanged, "bench lead"), (again.State, again.InEffect.MadeBy));
        Assert.Equal(changes, (await ChangesAsync()).Count);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(" ")]
    public async Task KeepAsync_OfAnotherDrawWithoutAReason_KeepsTheOneInEffect(string? why)
    {
        await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 7));

        var refused = await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 8, reversed: true), why);

        Assert.Equal((BenchOrderState.NeedsReason, 7L), (refused.State, refused.InEffect.Seed));
        Assert.Equal(Barcodes(1), (await FindAsync(1, BenchOrderKinds.Analysis))!.Places.Select(place => place.Barcode));
    }

    [Fact]
    public async Task KeepAsync_OfAnotherDrawWithAReason_PutsItInEffectAndKeepsTheOldOne()
    {
        await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 7));

        var kept = await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 8, reversed: true), "two bags were lost");

        Assert.Equal((BenchOrderState.Kept, 2), (kept.State, kept.InEffect.DrawNo));
        Assert.Equal(Barcodes(1).Reverse(), (await FindAsync(1, BenchOrderKinds.Analysis))!.Places.Select(place => place.Barcode));
        var draws = await ReadAsync(session => BenchOrderStore.ListAsync(session, SpecExample.Plan.Code, 1, BenchOrderKinds.Analysis));
        Assert.Equal([(7L, "first draw"), (8L, "two bags were lost")], draws.Select(draw => (draw.Seed, draw.Why)));
    }

    [Fact]
    public async Task ListOfSamplesAsync_OfARun_GivesTheOrdersInEffectThatHoldItsSamples()
    {
        await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 7));
        await KeepAsync(Order(1, BenchOrderKinds.Analysis, seed: 8, reversed: true), "two bags were lost");
        await KeepAsync(Order(1, BenchOrderKinds.Frying, seed: 9));
        await KeepAsync(Order(2, BenchOrderKinds.Analysis, seed: 10));

        var orders = await ReadAsync(session => BenchOrderStore.ListOfSamplesAsync(session, BenchOrderKinds.Analysis, [Barcodes(1)[2], Barcodes(1)[3], "NOT PLANNED"]));

        var order = Assert.Single(orders);
        Assert.Equal((1, 2, 8L, 8), (order.PullNo, order.DrawNo, order.Seed, order.Places.Count));
        Assert.Empty(await ReadAsync(session => BenchOrderStore.ListOfSamplesAsync(session, BenchOrderKinds.Analysis, [])));
    }

    [Fact]
    public void PlannedAround_OfOneBlocksSamples_GivesThatBlockAlone()
    {
        var order = Order(1, BenchOrderKinds.Analysis, seed: 7);

        Assert.Equal(Barcodes(1).Skip(4), order.PlannedAround([Barcodes(1)[6], "NOT PLANNED"]));
        Assert.Empty(order.PlannedAround(["NOT PLANNED"]));
    }

    private static string[] Barcodes(int pull) =>
        [.. PlanSamples.Of(SpecExample.Plan).Where(sample => sample.Pull.Number == pull).Select(sample => sample.Barcode.Text)];

    private static BenchOrder Order(int pull, string kind, long seed, bool reversed = false)
    {
        var samples = PlanSamples.Of(SpecExample.Plan).Where(sample => sample.Pull.Number == pull).ToList();
        return new BenchOrder
        {
            TrialCode = SpecExample.Plan.Code,
            PullNo = pull,
            Kind = kind,
            Seed = seed,
            MadeAt = Now,
            MadeBy = "bench lead",
            Places =
            [
                .. (reversed ? Enumerable.Reverse(samples) : samples).Select((sample, index) => new BenchPlace
                {
                    Position = index + 1,
                    Barcode = sample.Barcode.Text,
                    Block = sample.Plot.Block,
                    PlotCode = sample.Plot.Code,
                }),
            ],
        };
    }

    private Task<BenchOrderKeep> KeepAsync(BenchOrder order, string? why = null) =>
        _scratch.Warehouse.WriteAsync(session => BenchOrderStore.KeepAsync(session, order, why), Token);

    private Task<BenchOrder?> FindAsync(int pull, string kind) =>
        ReadAsync(session => BenchOrderStore.FindAsync(session, SpecExample.Plan.Code, pull, kind));

    private Task<IReadOnlyList<Change>> ChangesAsync() => ReadAsync(session => ChangeLogStore.ListAsync(session, "trial:" + SpecExample.Plan.Code));

    private Task<T> ReadAsync<T>(Func<WarehouseSession, Task<T>> read) => _scratch.Warehouse.ReadAsync(read, Token);
}
