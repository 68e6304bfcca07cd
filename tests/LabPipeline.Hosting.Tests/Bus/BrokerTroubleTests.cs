using System.Diagnostics;
using System.Globalization;
using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing.Broker;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>The broker fails in all its ways; the laboratory's own process is never restarted.</summary>
[Collection(SharedBroker.Name)]
public sealed class BrokerTroubleTests(RabbitFixture broker, ITestOutputHelper output)
{
    // The promise: from the broker's return until messages are handled again, without a person. How long the backlog then takes is the disk's matter.
    private static readonly TimeSpan LongestRecovery = TimeSpan.FromSeconds(60);

    // Takes the consumers out of the queue's state on the broker; their channels stay open and no client is told.
    private const string ForgetConsumers =
        $$"""
        {ok, Q} = rabbit_amqqueue:lookup(rabbit_misc:r(<<"/">>, queue, <<"{{NotingConsumer.Endpoint}}">>)),
        [ra:process_command(amqqueue:get_pid(Q), rabbit_fifo:make_checkout({element(2, C), element(1, C)}, cancel, #{})) || C <- rabbit_amqqueue:consumers(Q)].
        """;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [Shows(31)]
    [InlineData(2)]
    [InlineData(30)]
    public async Task Messages_WhenTheBrokerIsStoppedUnderLoad_AllArriveAndTheBusRecoversByItself(int secondsDown)
    {
        await using var lab = await StartAsync();
        var node = broker.Node();

        await UnderLoadAsync(lab, node.StopAsync);
        await Task.Delay(TimeSpan.FromSeconds(secondsDown), Stop);
        await lab.SendAsync(100);
        await node.StartAsync();

        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(31)]
    public async Task Messages_WhenTheBrokerIsKilledUnderLoad_AllArriveAndTheBusRecoversByItself()
    {
        await using var lab = await StartAsync();
        var node = broker.Node();

        await UnderLoadAsync(lab, node.KillAsync);
        await lab.SendAsync(100);
        await node.StartAsync();

        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(40)]
    public async Task Messages_WhenTheBrokerFreezes_AllArriveOnceItThaws()
    {
        await using var lab = await StartAsync();
        var node = broker.Node();
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        node.Freeze();
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(!lab.Bus.IsUp), "the silence noticed");
        node.Thaw();

        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(32)]
    public async Task Messages_WhenTheBrokerTakesNone_WaitInTheOutboxWhileItsOwnAreStillHandled()
    {
        await using var lab = await StartAsync();
        var node = broker.Node();
        lab.Handling.OnMessage = _ => Task.Delay(20, Stop);
        await lab.SendAsync(200);
        await lab.UntilAsync(async () => await lab.UnpublishedAsync() == 0, "all with the broker");

        await node.ControlAsync("set_disk_free_limit", "9000GB");
        await lab.AllHandledAsync();
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("takes no messages", StringComparison.Ordinal)), "the refusal noticed");
        await Task.Delay(TimeSpan.FromSeconds(15), Stop);

        var during = lab.Bus.Condition;
        Assert.Equal(100, await lab.UnpublishedAsync());
        Assert.Equal(0, during.Rebuilds);
        Assert.Equal(HealthStatus.Degraded, await lab.HealthAsync());
        await node.ControlAsync("set_disk_free_limit", "50MB");
        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(32)]
    public async Task Messages_WhenTheBrokerIsKilledWhileItTakesNone_AllArrive()
    {
        await using var lab = await StartAsync();
        var node = broker.Node();
        await node.ControlAsync("set_disk_free_limit", "9000GB");
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("takes no messages", StringComparison.Ordinal)), "the refusal noticed");

        await node.KillAsync();
        await node.StartAsync();

        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(33)]
    public async Task Messages_WhenAQueueIsDeleted_AllArriveInANewOne()
    {
        await using var lab = await StartAsync();
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        await broker.WithChannelAsync(channel => channel.QueueDeleteAsync(NotingConsumer.Endpoint));
        await lab.SendAsync(100);

        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(33)]
    public async Task Messages_WhenNoQueueIsBound_StayInTheOutboxUntilOneIs()
    {
        await using var lab = await StartAsync(BusLab.Brisk with { LookEvery = TimeSpan.FromMinutes(10) });
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        var exchange = RabbitTopology.ExchangeOf(typeof(Contracts.V1.FileRefused));
        await broker.WithChannelAsync(channel => channel.ExchangeUnbindAsync(NotingConsumer.Endpoint, exchange, ""));
        await lab.SendAsync(10);
        await Task.Delay(TimeSpan.FromSeconds(5), Stop);
        Assert.Equal(10, await lab.UnpublishedAsync());

        await broker.WithChannelAsync(channel => channel.ExchangeBindAsync(NotingConsumer.Endpoint, exchange, ""));
        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(33)]
    public async Task Binding_WhenSomebodyRemovedIt_IsDeclaredAgainByItself()
    {
        await using var lab = await StartAsync();
        await lab.SendAsync(10);
        await lab.AllHandledAsync();

        var exchange = RabbitTopology.ExchangeOf(typeof(Contracts.V1.FileRefused));
        await broker.WithChannelAsync(channel => channel.ExchangeUnbindAsync(NotingConsumer.Endpoint, exchange, ""));
        await lab.SendAsync(10);

        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(39)]
    public async Task Messages_WhenTheBrokerForgetsTheConsumer_AreHandledByANewOne()
    {
        await using var lab = await StartAsync();
        var node = broker.Node();
        await lab.SendAsync(10);
        await lab.AllHandledAsync();

        Assert.Contains("{ok,ok", await node.ControlAsync("eval", ForgetConsumers), StringComparison.Ordinal);
        await lab.SendAsync(100);

        await AssertRecoveredAsync(lab);
    }

    [Fact]
    [Shows(36)]
    public async Task Message_WhenItCannotBeRead_IsParkedByWayOfTheDeadLetters()
    {
        await using var lab = await StartAsync();

        await broker.WithChannelAsync(async channel => await channel.BasicPublishAsync("", NotingConsumer.Endpoint, "{ not an envelope"u8.ToArray()));
        await lab.UntilAsync(async () => (await lab.ParkedAsync()).Count == 1, "parked");

        var parked = Assert.Single(await lab.ParkedAsync());
        Assert.Equal(NotingConsumer.Endpoint, parked.Endpoint);
        Assert.Equal("{ not an envelope", parked.Body);
        Assert.Contains("gave up after 20 deliveries", parked.Reason, StringComparison.Ordinal);
    }

    [Fact]
    [Shows(34)]
    public async Task Message_WhenItsProcessEndsEachTime_IsParkedAndCanBeReplayed()
    {
        await using var victim = await StartAsync();
        var gate = new TaskCompletionSource();
        victim.Handling.OnMessage = _ => gate.Task;
        await victim.SendAsync(1);
        await victim.UntilAsync(() => Task.FromResult(victim.Handling.Tries == 1), "in hand");
        var stopping = victim.StopAsync();
        await Task.Delay(BusLab.Brisk.Stop + TimeSpan.FromSeconds(2), Stop);
        gate.SetException(new InvalidOperationException("the process ended"));
        await stopping;

        await TakeAndDropAsync(RabbitTopology.DeliveryLimit + 1);
        victim.Handling.OnMessage = _ => Task.CompletedTask;
        await victim.StartAsync();
        await victim.UntilAsync(async () => (await victim.ParkedAsync()).Count == 1, "parked");
        var parked = (await victim.ParkedAsync())[0];
        Assert.Equal("LabPipeline.Contracts.V1.FileRefused", parked.Type);
        await victim.ReplayAsync(parked);

        await victim.AllHandledAsync();
        await victim.AssertEachOnceAsync();
    }

    private async Task<BusLab> StartAsync(BusPatience? patience = null)
    {
        var lab = await BusLab.StartAsync(await broker.SettingsAsync(), patience);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.IsUp), "the bus up");

        // Seen on 3.10.8: killed within a second after a queue was made, the broker forgets who keeps it. A laboratory's queues are older.
        await Task.Delay(TimeSpan.FromSeconds(5), Stop);
        return lab;
    }

    /// <summary>As a process does that dies while it handles the message: connection gone, no answer.</summary>
    private async Task TakeAndDropAsync(int times)
    {
        for (var time = 0; time < times; time++)
        {
            await broker.WithChannelAsync(async channel => await channel.BasicGetAsync(NotingConsumer.Endpoint, autoAck: false));
        }
    }

    private static async Task UnderLoadAsync(BusLab lab, Func<Task> trouble)
    {
        lab.Handling.OnMessage = _ => Task.Delay(5, Stop);
        await lab.SendAsync(2000);
        await lab.UntilAsync(async () => await lab.UnpublishedAsync() < 2000, "publishing under way");
        Assert.True(await lab.UnpublishedAsync() > 400, "Two windows of messages are on their way or wait when the trouble begins.");
        await trouble();
        lab.Handling.OnMessage = _ => Task.CompletedTask;
    }

    private async Task AssertRecoveredAsync(BusLab lab)
    {
        var watch = Stopwatch.StartNew();
        var before = (await lab.EffectsAsync()).Count;
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.IsUp), "the bus up again");
        var up = watch.Elapsed;
        await lab.UntilAsync(async () => Math.Min(before + 1, lab.Sent) <= (await lab.EffectsAsync()).Count, "handling again");
        var recovered = watch.Elapsed;
        await lab.AllHandledAsync();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"bus up after {up.TotalSeconds:0.0} s, handling again after {recovered.TotalSeconds:0.0} s, all handled after {watch.Elapsed.TotalSeconds:0.0} s, {lab.Bus.Condition.Rebuilds} rebuilds, {lab.Handling.Tries} deliveries"));
        Assert.True(recovered < LongestRecovery, $"Recovered after {recovered.TotalSeconds:0} s.");
        await lab.AssertEachOnceAsync();
        Assert.Equal(0, await lab.UnpublishedAsync());
        Assert.Empty(await lab.ParkedAsync());
        Assert.Equal(HealthStatus.Healthy, await lab.HealthAsync());
    }
}
