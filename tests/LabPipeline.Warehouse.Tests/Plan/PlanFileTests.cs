using LabPipeline.Testing;
using LabPipeline.Warehouse.Plan;

namespace LabPipeline.Warehouse.Tests.Plan;

public sealed class PlanFileTests
{
    [Fact]
    public async Task Read_OfADocumentWithAPlotsFile_ReadsBoth()
    {
        using var folder = new ScratchFolder();
        var json = SpecExample.JsonWith(root =>
        {
            root.Remove("plots");
            root["plotsFile"] = "plots.csv";
        });
        await File.WriteAllTextAsync(folder.File("plan.json"), "\uFEFF" + json, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(folder.File("plots.csv"), SpecExample.PlotsCsv, TestContext.Current.CancellationToken);

        Assert.Equal(8, PlanFile.Read(folder.File("plan.json")).Plan!.Plots.Count);
    }

    [Fact]
    public async Task Read_OfBytesThatAreNotUtf8_IsRefused()
    {
        using var folder = new ScratchFolder();
        await File.WriteAllBytesAsync(folder.File("plan.json"), [0x7B, 0xB0, 0x7D], TestContext.Current.CancellationToken);

        Assert.Equal("bytes that are not UTF-8", Assert.Single(PlanFile.Read(folder.File("plan.json")).Faults).Found);
    }
}
