namespace LabPipeline.EndToEnd.Tests.Crashes;

/// <summary>The warehouse is lost altogether; plan and archive bring it back, with results and alerts: promise P8.</summary>
public sealed class RebuildTests
{
    private const int Rounds = 4;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(58)]
    public async Task Warehouse_WhenRebuiltFromTheArchiveAlone_IsRowForRowAsBefore()
    {
        using var lab = await CrashLab.CreateAsync(new SmallSeason(Rounds), Stop);
        for (var round = 0; round < Rounds; round++)
        {
            lab.DropNext();
        }

        await lab.SettleAsync(Stop);
        var before = await WarehouseContents.ReadAsync(lab.Path);
        await RunAsync("audit", "--data", lab.Path);

        await RunAsync("rebuild", "--empty", "--by", "test", "--why", "the disk died", "--data", lab.Path);
        await lab.LoadPlanAsync(Stop);
        await lab.SettleAsync(Stop);

        Assert.Empty(WarehouseContents.Differences(before, await WarehouseContents.ReadAsync(lab.Path)));
        await lab.AssertCompleteAsync();
        await RunAsync("audit", "--data", lab.Path);
    }

    private static async Task RunAsync(params string[] arguments)
    {
        using var process = ProductProcess.Start("Station", arguments);
        var (exitCode, output, errors) = await process.FinishAsync(Stop);
        Assert.True(exitCode == 0, output + errors);
    }
}
