using System.Diagnostics;
using System.Globalization;
using LabPipeline.Testing;

namespace LabPipeline.EndToEnd.Tests;

/// <summary>The README's first command, as a process: it ends well, and no kill -9 changes where it ends. Many kills on a smaller season are in <see cref="Crashes.KillTests"/>.</summary>
public sealed class DemoTests(ITestOutputHelper output)
{
    private const int Kills = 2;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Demo_WhenKilledAtRandomMoments_EndsRowForRowAsUndisturbed()
    {
        using var calm = new ScratchFolder();
        using var shaken = new ScratchFolder();
        var watch = Stopwatch.StartNew();
        using (var undisturbed = ProductProcess.Start("Station", "demo", "--data", calm.Path))
        {
            var (exitCode, text, errors) = await undisturbed.FinishAsync(Stop);
            Assert.True(exitCode == 0, errors);
            Assert.DoesNotContain(" NO ", text, StringComparison.Ordinal);
        }

        await KillRepeatedlyAsync(shaken.Path, watch.Elapsed);
        using (var last = ProductProcess.Start("Station", "demo", "--data", shaken.Path))
        {
            var (exitCode, _, errors) = await last.FinishAsync(Stop);
            Assert.True(exitCode == 0, errors);
        }

        var expected = await WarehouseContents.ReadAsync(calm.Path);
        Assert.True(expected["readings"].Count > 10_000, "The demonstration holds more than 10,000 readings.");
        Assert.Empty(WarehouseContents.Differences(expected, await WarehouseContents.ReadAsync(shaken.Path)));
    }

    /// <summary>Kills at moments spread over the first third of a run; a run that ends first is wiped and does not count.</summary>
    private async Task KillRepeatedlyAsync(string folder, TimeSpan calmRun)
    {
        var seed = Environment.TickCount;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"seed {seed}, undisturbed run {calmRun.TotalSeconds:0.0} s"));
        var random = new Random(seed);
        for (var killed = 0; killed < Kills;)
        {
            using var process = ProductProcess.Start("Station", "demo", "--data", folder);
            await Task.Delay(calmRun * (0.05 + (0.30 * random.NextDouble())), Stop);
            if (process.HasExited)
            {
                Assert.Equal(0, process.ExitCode);
                Directory.Delete(folder, recursive: true);
                continue;
            }

            await process.KillAsync();
            killed++;
        }
    }
}
