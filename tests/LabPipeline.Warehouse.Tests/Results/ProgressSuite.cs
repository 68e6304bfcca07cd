using LabPipeline.Science.Quantities;
using LabPipeline.Testing;
using LabPipeline.Warehouse.Facts;
using LabPipeline.Warehouse.Plan;
using LabPipeline.Warehouse.Results;
using LabPipeline.Warehouse.Tests.Facts;
using LabPipeline.Warehouse.Tests.Plan;

namespace LabPipeline.Warehouse.Tests.Results;

public abstract class ProgressSuite(DialectName store)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Progress_OfATrial_CountsSamplesWithReadingsInEffect()
    {
        await using var scratch = await ScratchWarehouse.CreateAsync(store);
        await scratch.Warehouse.WriteAsync(session => PlanStore.LoadAsync(session, SpecExample.Plan, FactFiles.Now, "field lead"), Stop);
        var barcodes = PlanSamples.Of(SpecExample.Plan).Where(sample => sample.Pull.Number == 1).Select(sample => sample.Barcode.Text).ToList();
        await FactFiles.StoreAsync(scratch, "a", barcodes.Take(3).Select((barcode, index) =>
            FactFiles.Reading($"{index}", 284.5m, barcode) with { QuantityId = QuantityCatalogue.WeightInWater.Id }));
        await FactFiles.StandAsync(scratch, "2", Standing.SetAside);

        var span = Assert.Single(await scratch.Warehouse.ReadAsync(PullProgressStore.ListTrialsAsync, Stop));
        var progress = await scratch.Warehouse.ReadAsync(session => PullProgressStore.ListAsync(session, span.TrialCode), Stop);

        Assert.Equal(("EX-NITRO-26", SpecExample.Plan.Pulls.Min(pull => pull.OpensOn)), (span.TrialCode, span.FirstOpensOn));
        var row = progress.Single(row => row.PullNo == 1 && row.Quantity == "weight_in_water");
        Assert.Equal((barcodes.Count, 2), (row.SamplesPlanned, row.SamplesMeasured));
    }
}
