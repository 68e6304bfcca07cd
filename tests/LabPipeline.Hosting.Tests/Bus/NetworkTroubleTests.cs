using System.Diagnostics;
using System.Globalization;
using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing.Broker;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>The network between a process and the broker loses packets, one way or both; and the broker runs short of memory.</summary>
[Collection(SharedBroker.Name)]
public sealed class NetworkTroubleTests(RabbitFixture broker, ITestOutputHelper output)
{
    // The waits of a laboratory, shortened once more, so that silence is noticed within seconds.
    private static readonly BusPatience Alert = BusLab.Brisk with
    {
        LookEvery = TimeSpan.FromSeconds(1),
        Answer = TimeSpan.FromSeconds(3),
        Publish = TimeSpan.FromSeconds(4),
        Start = TimeSpan.FromSeconds(8),
        Stop = TimeSpan.FromSeconds(2),
    };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [Shows(40)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public async Task Messages_WhenTheNetworkIsCut_AllArriveOnceItHeals(bool towardsBroker, bool towardsLab)
    {
        var settings = new Dictionary<string, string?>(await broker.SettingsAsync());
        await using var network = new TcpProxy(int.Parse(settings["Lab:Rabbit:Port"]!, CultureInfo.InvariantCulture));
        settings["Lab:Rabbit:Port"] = network.Port.ToString(CultureInfo.InvariantCulture);
        await using var lab = await BusLab.StartAsync(settings, Alert);
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        network.Cut(towardsBroker, towardsLab);
        var watch = Stopwatch.StartNew();
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(!lab.Bus.IsUp), "the cut noticed");
        var noticed = watch.Elapsed;
        Assert.Equal(HealthStatus.Degraded, await lab.HealthAsync());
        network.Heal();
        watch.Restart();
        await lab.AllHandledAsync();

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"noticed after {noticed.TotalSeconds:0.0} s, all handled {watch.Elapsed.TotalSeconds:0.0} s after it healed"));
        await lab.AssertEachOnceAsync();
        Assert.Empty(await lab.ParkedAsync());
    }

    /// <summary>Connections stand and the broker answers every question, and yet what is sent does not arrive.</summary>
    [Fact]
    public async Task Messages_WhenTheCanaryDoesNotComeBack_AreHandledByANewBus()
    {
        var node = broker.Node();
        await using var lab = await BusLab.StartAsync(await broker.SettingsAsync(), Alert);
        await lab.SendAsync(10);
        await lab.AllHandledAsync();
        var queues = (await node.ControlAsync("list_queues", "name", "--silent")).Split('\n');
        var canary = Assert.Single(queues, queue => queue.StartsWith("lab-canary-", StringComparison.Ordinal)).Trim();

        await broker.WithChannelAsync(channel => channel.QueueUnbindAsync(canary, canary, ""));
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("the canary did not come back within 3 s", StringComparison.Ordinal)), "the loss noticed");
        await lab.SendAsync(10);

        await lab.AllHandledAsync();
        await lab.AssertEachOnceAsync();
        Assert.Equal(1, lab.Bus.Condition.Rebuilds);
    }

    [Fact]
    [Shows(32)]
    public async Task Messages_WhenTheBrokerIsShortOfMemory_WaitInTheOutboxAndArriveAfterwards()
    {
        var node = broker.Node();
        await using var lab = await BusLab.StartAsync(await broker.SettingsAsync(), Alert);
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        await node.ControlAsync("set_vm_memory_high_watermark", "0");
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("takes no messages", StringComparison.Ordinal)), "the refusal noticed");
        await Task.Delay(Alert.Publish + TimeSpan.FromSeconds(1), Stop);

        Assert.Equal(100, await lab.UnpublishedAsync());
        Assert.Equal(0, lab.Bus.Condition.Rebuilds);
        await node.ControlAsync("set_vm_memory_high_watermark", "0.4");
        await lab.AllHandledAsync();
        await lab.AssertEachOnceAsync();
    }

    [Fact]
    [Shows(35)]
    public async Task Messages_WhenTheirProcessEndsEachTimeWithThemInHand_AreParkedTogetherAndLostNone()
    {
        const int InHand = 8;
        await using var victim = await BusLab.StartAsync(await broker.SettingsAsync(), Alert);
        var gate = new TaskCompletionSource();
        victim.Handling.OnMessage = _ => gate.Task;
        await victim.SendAsync(InHand);
        await victim.UntilAsync(() => Task.FromResult(victim.Handling.Tries > 0), "some in hand");

        // The message in hand holds the warehouse's pen, so the others go to the broker and cannot be marked as published.
        await Task.Delay(TimeSpan.FromSeconds(1), Stop);
        var stopping = victim.StopAsync();
        await Task.Delay(Alert.Stop + TimeSpan.FromSeconds(2), Stop);
        gate.SetException(new InvalidOperationException("the process ended"));
        await stopping;

        // The broker counts all unacknowledged messages of a consumer that died, the innocent ones too.
        for (var death = 0; death <= RabbitTopology.DeliveryLimit; death++)
        {
            await broker.WithChannelAsync(async channel =>
            {
                while (await channel.BasicGetAsync(NotingConsumer.Endpoint, autoAck: false) is not null)
                {
                }
            });
        }

        victim.Handling.OnMessage = _ => Task.CompletedTask;
        await victim.StartAsync();
        await victim.UntilAsync(async () => (await victim.ParkedAsync()).Count + (await victim.EffectsAsync()).Count >= InHand && (await victim.ParkedAsync()).Count > 0, "each parked or handled");
        var parked = await victim.ParkedAsync();
        output.WriteLine($"{parked.Count} parked");
        foreach (var message in parked)
        {
            await victim.ReplayAsync(message);
        }

        await victim.AllHandledAsync();
        await victim.AssertEachOnceAsync();
        Assert.Empty(await victim.ParkedAsync());
    }
}
