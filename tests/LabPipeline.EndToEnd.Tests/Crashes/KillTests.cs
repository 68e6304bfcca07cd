using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.EndToEnd.Tests.Crashes;

/// <summary>kill -9 at random moments, each time over files just dropped, in one warehouse all along.</summary>
/// <remarks><c>LABPIPELINE_KILL_ROUNDS=1000</c> asks for more rounds, <c>LABPIPELINE_SEED</c> for those of an earlier run.</remarks>
public sealed class KillTests(ITestOutputHelper output)
{
    private const int RoundsByDefault = 60;

    // A fifth of the kills fall into the start, where the one before is cleared up.
    private const double InTheStart = 0.2;

    // What a round of files takes on a quiet machine, and some idling.
    private static readonly TimeSpan LongestLife = TimeSpan.FromMilliseconds(900);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(5, 61)]
    public async Task Station_WhenKilledInEveryRound_LosesAndDoublesNothing()
    {
        var rounds = Number("LABPIPELINE_KILL_ROUNDS") ?? RoundsByDefault;
        var seed = Number("LABPIPELINE_SEED") ?? Environment.TickCount;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}"));
        var random = new Random(seed);
        var season = new SmallSeason(rounds);
        using var shaken = await CrashLab.CreateAsync(season, Stop);
        using var calm = await CrashLab.CreateAsync(season, Stop);
        var watch = Stopwatch.StartNew();
        var unfinished = 0;
        for (var round = 0; round < rounds; round++)
        {
            calm.DropNext();
            await KillOnceAsync(shaken, random);
            await shaken.AssertSoundAsync();
            unfinished += await shaken.UnsettledAsync() is null ? 0 : 1;
        }

        await shaken.SettleAsync(Stop);
        await shaken.AssertCompleteAsync();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rounds} kills in {watch.Elapsed.TotalSeconds:0} s, {unfinished} of them with work open"));
        Assert.True(unfinished > rounds / 3, "A kill that meets nobody at work proves nothing.");

        await calm.SettleAsync(Stop);
        Assert.Empty(WarehouseContents.Differences(await WarehouseContents.ReadAsync(calm.Path), await WarehouseContents.ReadAsync(shaken.Path)));
    }

    private static async Task KillOnceAsync(CrashLab lab, Random random)
    {
        var inTheStart = random.NextDouble() < InTheStart;
        if (inTheStart)
        {
            lab.DropNext();
        }

        using var station = lab.Start();
        if (!inTheStart)
        {
            await station.FirstWord;
            lab.DropNext();
        }

        await Task.Delay(LongestLife * random.NextDouble(), Stop);
        Assert.False(station.HasExited);
        await station.KillAsync();
    }

    private static int? Number(string variable) =>
        Environment.GetEnvironmentVariable(variable) is { Length: > 0 } text ? int.Parse(text, CultureInfo.InvariantCulture) : null;
}
