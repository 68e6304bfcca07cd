using System.Diagnostics;
using System.Globalization;
using LabPipeline.Testing;
using LabPipeline.Testing.Broker;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>The network or the broker carries nothing for a while, or the broker takes no messages.</summary>
public sealed class NetworkTroubleTests(RabbitFixture broker, ITestOutputHelper output) : IClassFixture<RabbitFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [Shows(40)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    [InlineData(true, true)]
    public async Task Messages_WhenTheNetworkIsCut_AllArriveOnceItHeals(bool towardsBroker, bool towardsLab)
    {
        var settings = new Dictionary<string, string?>(await broker.SettingsAsync());
        await using var network = new TcpProxy(broker.Port);
        settings["Lab:Rabbit:Port"] = network.Port.ToString(CultureInfo.InvariantCulture);
        await using var lab = await BusLab.StartAsync(settings, BusLab.Alert);
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
        await using var lab = await Recovery.StartAsync(broker, BusLab.Alert);
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
    [Shows(40)]
    public async Task Messages_WhenTheBrokerFreezes_AllArriveOnceItThaws()
    {
        await using var lab = await Recovery.StartAsync(broker, BusLab.Alert);
        var node = broker.Node();
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        node.Freeze();
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(!lab.Bus.IsUp), "the silence noticed");
        node.Thaw();

        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(32)]
    public async Task Messages_WhenTheBrokerTakesNone_WaitInTheOutboxWhileItsOwnAreStillHandled()
    {
        await using var lab = await Recovery.StartAsync(broker, BusLab.Alert);
        var node = broker.Node();
        lab.Handling.OnMessage = _ => Task.Delay(20, Stop);
        await lab.SendAsync(200);
        await lab.UntilAsync(async () => await lab.UnpublishedAsync() == 0, "all with the broker");

        await node.ControlAsync("set_disk_free_limit", "9000GB");
        await lab.AllHandledAsync();
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("takes no messages", StringComparison.Ordinal)), "the refusal noticed");
        await AssertStaysAsync(lab);
        Assert.Equal(HealthStatus.Degraded, await lab.HealthAsync());
        await node.ControlAsync("set_disk_free_limit", "50MB");
        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(32)]
    public async Task Bus_WhenItStartsWhileTheBrokerTakesNone_KeepsItsMessagesAndCatchesUp()
    {
        var settings = await broker.SettingsAsync();
        var node = broker.Node();
        await node.ControlAsync("set_disk_free_limit", "9000GB");
        await using var lab = await BusLab.StartAsync(settings, BusLab.Alert);
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("did not come back", StringComparison.Ordinal)), "the first start given up");

        Assert.Equal((false, 100), (lab.Bus.Condition.IsUp, await lab.UnpublishedAsync()));
        await node.ControlAsync("set_disk_free_limit", "50MB");
        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(32)]
    public async Task Messages_WhenTheBrokerIsShortOfMemory_WaitInTheOutboxAndArriveAfterwards()
    {
        var node = broker.Node();
        await using var lab = await Recovery.StartAsync(broker, BusLab.Alert);
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        await node.ControlAsync("set_vm_memory_high_watermark", "0");
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("takes no messages", StringComparison.Ordinal)), "the refusal noticed");
        await AssertStaysAsync(lab);
        await node.ControlAsync("set_vm_memory_high_watermark", "0.4");
        await lab.AllHandledAsync();
        await lab.AssertEachOnceAsync();
    }

    /// <summary>A publish runs into its time limit and the next look finds no canary; neither is a reason to give up a bus that is only refused.</summary>
    private static async Task AssertStaysAsync(BusLab lab)
    {
        var before = lab.Bus.Condition.Rebuilds;
        await Task.Delay(BusLab.Alert.Publish + BusLab.Alert.Answer + BusLab.Alert.LookEvery, Stop);
        Assert.Equal(100, await lab.UnpublishedAsync());
        Assert.Equal(before, lab.Bus.Condition.Rebuilds);
    }
}
