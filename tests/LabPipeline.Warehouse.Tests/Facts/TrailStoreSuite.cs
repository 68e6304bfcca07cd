using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;
using LabPipeline.Warehouse.Tests.Plan;

namespace LabPipeline.Warehouse.Tests.Facts;

public abstract class TrailStoreSuite(DialectName store)
{
    private static readonly string Barcode = PlanSamples.Of(SpecExample.Plan)[0].Barcode.Text;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Trail_OfAPlannedSample_LeadsFromItsPlotToFileAndLine()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, SpecExample.Plan, FactFiles.Now, "field lead"), Stop);
        var (file, _) = await FactFiles.StoreAsync(scratch, "a.csv", FactFiles.Reading("1", 0.052m, Barcode) with { Line = 7 });
        await FactFiles.StoreAsync(scratch, "b.csv", FactFiles.Reading("1", 0.025m, Barcode));
        var result = new SampleResultRow
        {
            Barcode = Barcode,
            QuantityId = QuantityCatalogue.Glucose.Id,
            Value = 0.054032435632m,
            N = 2,
            S = 0.003m,
            Basis = "mean of 2",
            FromReadings = "[1]",
            ComputedAt = FactFiles.Now,
        };
        await scratch.Warehouse.WriteAsync(session => ResultStore.ReplaceAsync(session, [Barcode], [result]), Stop);

        var sample = await scratch.Warehouse.ReadAsync(session => TrailStore.FindSampleAsync(session, Barcode), Stop);
        var readings = await scratch.Warehouse.ReadAsync(session => TrailStore.ListReadingsAsync(session, Barcode), Stop);
        var results = await scratch.Warehouse.ReadAsync(session => TrailStore.ListResultsAsync(session, Barcode), Stop);

        Assert.Equal(("EX-NITRO-26", 1, "101"), (sample!.TrialCode, sample.PullNo, sample.PlotCode));
        Assert.Equal([(0.052m, "in effect"), (0.025m, "contested")], readings.Select(reading => (reading.Value, reading.Standing)));
        Assert.Equal(
            ("a.csv", file.Sha256, 7, "g/L", (DateTimeOffset?)FactFiles.Now, (int?)3),
            (readings[0].FileName, readings[0].FileSha256, readings[0].Line, readings[0].Unit, readings[0].MeasuredAt, readings[0].ProfileVersion));
        Assert.Equal((0.054032435632m, (decimal?)0.003m, "glucose"), (results[0].Value, results[0].S, results[0].Quantity));
        Assert.Null(await scratch.Warehouse.ReadAsync(session => TrailStore.FindSampleAsync(session, Barcode.ToLowerInvariant()), Stop));
    }
}
