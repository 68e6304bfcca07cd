using System.Diagnostics;
using System.Globalization;
using LabPipeline.Hosting.Bus;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>What a laboratory's process must be like before trouble and again after it; the process itself is never restarted.</summary>
internal static class Recovery
{
    // The promise: from the broker's return until messages are handled again, without a person. How long the backlog then takes is the disk's matter.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(60);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<BusLab> StartAsync(RabbitFixture broker, BusPatience patience)
    {
        var lab = await BusLab.StartAsync(await broker.SettingsAsync(), patience);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.IsUp), "the bus up");
        return lab;
    }

    /// <summary>For a broker that is going to be killed.</summary>
    /// <remarks>Seen on 3.10.8: killed within a second after a queue was made, the broker forgets who keeps it. A laboratory's queues are older.</remarks>
    public static async Task<BusLab> StartSettledAsync(RabbitFixture broker, BusPatience patience)
    {
        var lab = await StartAsync(broker, patience);
        await Task.Delay(TimeSpan.FromSeconds(5), Stop);
        return lab;
    }

    /// <summary>Begins <paramref name="trouble"/> while messages are on their way out and in.</summary>
    public static async Task UnderLoadAsync(BusLab lab, Func<Task> trouble)
    {
        lab.Handling.OnMessage = _ => Task.Delay(5, Stop);
        await lab.SendAsync(2000);
        await lab.UntilAsync(async () => await lab.UnpublishedAsync() < 2000, "publishing under way");
        Assert.True(await lab.UnpublishedAsync() > 400, "Two windows of messages are on their way or wait when the trouble begins.");
        await trouble();
        lab.Handling.OnMessage = _ => Task.CompletedTask;
    }

    public static async Task AssertAsync(BusLab lab, ITestOutputHelper output)
    {
        var watch = Stopwatch.StartNew();
        var before = (await lab.EffectsAsync()).Count;
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.IsUp), "the bus up again");
        var up = watch.Elapsed;
        await lab.UntilAsync(async () => Math.Min(before + 1, lab.Sent) <= (await lab.EffectsAsync()).Count, "handling again");
        var recovered = watch.Elapsed;
        await lab.AllHandledAsync();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"bus up after {up.TotalSeconds:0.0} s, handling again after {recovered.TotalSeconds:0.0} s, all handled after {watch.Elapsed.TotalSeconds:0.0} s, {lab.Bus.Condition.Rebuilds} rebuilds, {lab.Handling.Tries} deliveries"));
        Assert.True(recovered < Longest, $"Recovered after {recovered.TotalSeconds:0} s.");
        await lab.AssertEachOnceAsync();
        Assert.Equal(0, await lab.UnpublishedAsync());
        Assert.Empty(await lab.ParkedAsync());
        Assert.Equal(HealthStatus.Healthy, await lab.HealthAsync());
    }
}
