using System.Diagnostics;
using System.Globalization;
using LabPipeline.Warehouse.Durability;

namespace LabPipeline.EndToEnd.Tests.Crashes;

/// <summary>The station ends itself between any two durable steps, at the first, second and later passes; the next one must go on from there.</summary>
public sealed class CrashPointTests(ITestOutputHelper output)
{
    private const int KilledBySignal = 128 + 9;

    // The transactions of a start, and of the files, messages and alerts of a round.
    private static readonly int[] TransactionPasses = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 17, 20, 24];

    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(3);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(11, 12, 29, 41, 51, 61)]
    public async Task Station_WhenItEndsAtEachDurableStep_EndsRowForRowAsUndisturbed()
    {
        var plan = Enum.GetValues<DurableStep>().SelectMany(step => PassesOf(step).Select(pass => (step, pass))).ToList();
        var season = new SmallSeason(plan.Count * 3);
        using var shaken = await CrashLab.CreateAsync(season, Stop);
        using var calm = await CrashLab.CreateAsync(season, Stop);
        var watch = Stopwatch.StartNew();
        var rounds = 0;
        foreach (var (step, pass) in plan)
        {
            rounds += await CrashAsync(shaken, step, pass);
            await shaken.AssertSoundAsync();
        }

        await shaken.SettleAsync(Stop);
        await shaken.AssertCompleteAsync();
        for (var round = 0; round < rounds; round++)
        {
            calm.DropNext();
        }

        await calm.SettleAsync(Stop);
        await calm.AssertCompleteAsync();
        Assert.Empty(WarehouseContents.Differences(await WarehouseContents.ReadAsync(calm.Path), await WarehouseContents.ReadAsync(shaken.Path)));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{plan.Count} crashes at {Enum.GetValues<DurableStep>().Length} steps over {rounds} rounds of files in {watch.Elapsed.TotalSeconds:0} s"));
    }

    private static int[] PassesOf(DurableStep step) => step is DurableStep.BeforeCommit or DurableStep.Committed
        ? TransactionPasses
        : [1, 2, 3];

    /// <summary>Drops files until the station has passed there often enough.</summary>
    /// <returns>How many rounds of files that took.</returns>
    private static async Task<int> CrashAsync(CrashLab lab, DurableStep step, int pass)
    {
        var watch = Stopwatch.StartNew();
        lab.DropNext();
        var rounds = 1;
        using var station = lab.Start(step, pass);
        while (!station.HasExited)
        {
            Assert.True(watch.Elapsed < LongestWait, $"{step} was not passed {pass} times, {await lab.UnsettledAsync()}.");
            if (rounds < 3 && await lab.UnsettledAsync() is null)
            {
                lab.DropNext();
                rounds++;
            }

            await Task.Delay(50, Stop);
        }

        var (exitCode, _, errors) = await station.FinishAsync(Stop);
        Assert.True(exitCode == KilledBySignal, $"{step}:{pass} ended with {exitCode}: {errors}");
        return rounds;
    }
}
