using System.Diagnostics;
using System.Globalization;

namespace LabPipeline.EndToEnd.Tests.Crashes;

/// <summary>Files keep coming while the station is killed once and frozen again and again: nothing is lost, and nothing grows.</summary>
/// <remarks><c>LABPIPELINE_SOAK_MINUTES=120</c> asks for two hours.</remarks>
public sealed class SoakTests(ITestOutputHelper output)
{
    private const double MinutesByDefault = 1;

    // Ten files a second: what all instruments of a large laboratory drop in its busiest minute.
    private const int RoundsPerSecond = 2;

    private static readonly TimeSpan ChaosEvery = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Frozen = TimeSpan.FromSeconds(2);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Station_WhenFilesKeepComingThroughKillsAndFreezes_LosesNothingAndDoesNotGrow()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "the machine's figures are read from /proc");
        var length = TimeSpan.FromMinutes(Minutes());
        using var lab = await CrashLab.CreateAsync(new SmallSeason((int)(length.TotalSeconds * RoundsPerSecond) + 1), Stop);

        // A third of the time to the kill; what is measured is the life after it.
        await LiveAsync(lab, length / 3, new ProcessGauge(lab.Path), killed: true);
        var gauge = new ProcessGauge(lab.Path);
        await LiveAsync(lab, length * 2 / 3, gauge, killed: false);

        await lab.SettleAsync(Stop);
        await lab.AssertCompleteAsync();
        var (early, late) = (gauge.MedianMegabytes(0.25, 0.5), gauge.MedianMegabytes(0.75, 1));
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{lab.Rounds} rounds in {length.TotalMinutes:0.#} min; memory {early:0} MB, later {late:0} MB, most {gauge.MostMegabytes:0} MB; handles {gauge.MostHandles}; journal {gauge.MostJournalMegabytes:0.0} MB; oldest message {gauge.MostOutboxSeconds:0.0} s"));

        // All six services in one process; a leak of 20 kB a file shows within ten minutes, one of 2 kB within two hours.
        Assert.True(late < (early * 1.15) + 15, $"Memory grew from {early:0} to {late:0} MB.");
        Assert.True(gauge.MostMegabytes < 450, $"Memory reached {gauge.MostMegabytes:0} MB.");
        Assert.True(gauge.MostHandles < 400, $"{gauge.MostHandles} handles were open.");
        Assert.True(gauge.MostJournalMegabytes < 64, $"The journal grew to {gauge.MostJournalMegabytes:0} MB.");
        Assert.True(gauge.MostOutboxSeconds < 30, $"A message waited {gauge.MostOutboxSeconds:0} s in the outbox.");
    }

    /// <summary>One life of the station under steady drops, frozen for a moment again and again.</summary>
    private static async Task LiveAsync(CrashLab lab, TimeSpan length, ProcessGauge gauge, bool killed)
    {
        using var station = lab.Start();
        await station.FirstWord;
        var watch = Stopwatch.StartNew();
        var nextChaos = ChaosEvery;
        for (var round = 0; watch.Elapsed < length; round++)
        {
            lab.DropNext();
            gauge.Note(station);
            if (watch.Elapsed > nextChaos)
            {
                await station.FreezeAsync(Frozen, Stop);
                nextChaos += ChaosEvery;
            }

            var ahead = TimeSpan.FromSeconds((round + 1.0) / RoundsPerSecond) - watch.Elapsed;
            await Task.Delay(ahead > TimeSpan.Zero ? ahead : TimeSpan.Zero, Stop);
            Assert.False(station.HasExited);
        }

        if (killed)
        {
            await station.KillAsync();
        }
        else
        {
            Assert.Equal(0, await station.StopAsync(Stop));
        }

        await lab.AssertSoundAsync();
    }

    private static double Minutes() =>
        Environment.GetEnvironmentVariable("LABPIPELINE_SOAK_MINUTES") is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : MinutesByDefault;
}
