using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Machinery;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;
using LabPipeline.Warehouse.Tests.Plan;

namespace LabPipeline.Warehouse.Tests.Results;

public abstract class ResultStoreSuite(DialectName store) : IAsyncLifetime
{
    private static readonly DateTimeOffset Now = new(2026, 10, 6, 15, 30, 0, TimeSpan.Zero);
    private static readonly string Barcode = PlanSamples.Of(SpecExample.Plan)[0].Barcode.Text;

    private ScratchWarehouse _scratch = null!;

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        _scratch = await ScratchWarehouse.CreateAsync(store);
        await _scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, SpecExample.Plan, Now, "field lead"), Token);
    }

    public async ValueTask DisposeAsync()
    {
        await _scratch.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Replace_OfResultsNeverSeen_StoresThem()
    {
        var rows = new[] { Row(QuantityCatalogue.Glucose, 0.054032435632m) with { S = 0.003021m }, Row(QuantityCatalogue.Sucrose, 0.2m) with { BelowLimit = true } };

        Assert.Equal(2, await ReplaceAsync(rows));
        Assert.Equal(rows, await ListAsync());
    }

    [Fact]
    public async Task Replace_ByTheSameResultsLater_TouchesNothing()
    {
        // Two thirds to 12 decimals, and a number with more digits than SQLite keeps.
        var rows = new[] { Row(QuantityCatalogue.Glucose, 0.666666666667m), Row(QuantityCatalogue.StorageShrink, 6666.666666666667m) };
        await ReplaceAsync(rows);

        Assert.Equal(0, await ReplaceAsync([.. rows.Select(row => row with { ComputedAt = Now.AddHours(1) })]));
        Assert.All(await ListAsync(), row => Assert.Equal(Now, row.ComputedAt));
    }

    [Fact]
    public async Task Replace_ByOtherResults_RewritesOnlyWhatChangedAndRemovesWhatIsGone()
    {
        await ReplaceAsync([Row(QuantityCatalogue.Glucose, 0.1m), Row(QuantityCatalogue.Sucrose, 0.2m), Row(QuantityCatalogue.DryMatter, 21m)]);

        var changed = await ReplaceAsync([Row(QuantityCatalogue.Glucose, 0.1m), Row(QuantityCatalogue.Sucrose, 0.2m) with { Basis = "mean of 3" }]);

        Assert.Equal(2, changed);
        Assert.Equal(["one extract", "mean of 3"], (await ListAsync()).Select(row => row.Basis));
    }

    [Fact]
    public async Task Repeatability_WhenKeptAgain_IsANewVersionWithATrail()
    {
        var first = await KeepAsync(0.0014m);
        var second = await KeepAsync(0.0012m);

        var rows = await _scratch.Warehouse.ReadAsync(RepeatabilityStore.ListAsync, Token);
        var own = rows.Where(row => row.QuantityId == QuantityCatalogue.Sucrose.Id).ToList();
        Assert.Equal((first.Version + 1, 0.0012m), (second.Version, own[0].Constant));
        Assert.Equal(own, own.OrderByDescending(row => row.Version));
        Assert.Equal(2, (await _scratch.Warehouse.ReadAsync(session => ChangeLogStore.ListAsync(session, "repeatability:sucrose"), Token)).Count);
    }

    private static SampleResultRow Row(Quantity quantity, decimal value) => new()
    {
        Barcode = Barcode,
        QuantityId = quantity.Id,
        Value = value,
        N = 1,
        Basis = "one extract",
        FromReadings = "[1,2]",
        ComputedAt = Now,
    };

    private Task<int> ReplaceAsync(IReadOnlyCollection<SampleResultRow> rows) =>
        _scratch.Warehouse.WriteAsync(session => ResultStore.ReplaceAsync(session, [Barcode], rows), Token);

    private Task<IReadOnlyList<SampleResultRow>> ListAsync() => _scratch.Warehouse.ReadAsync(session => ResultStore.ListAsync(session, [Barcode]), Token);

    private Task<RepeatabilityRow> KeepAsync(decimal constant) => _scratch.Warehouse.WriteAsync(
        session => RepeatabilityStore.KeepAsync(session, new RepeatabilityRow
        {
            QuantityId = QuantityCatalogue.Sucrose.Id,
            Constant = constant,
            Relative = 0.04m,
            Pairs = 20,
            Source = "duplicates of this season",
            KeptAt = Now,
            KeptBy = "lab manager",
        }), Token);
}
