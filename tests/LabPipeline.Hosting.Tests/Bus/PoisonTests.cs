using System.Globalization;
using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing;
using LabPipeline.Testing.Broker;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>Messages that cannot be read, and messages that end the process which handles them.</summary>
public sealed class PoisonTests(RabbitFixture broker, ITestOutputHelper output) : IClassFixture<RabbitFixture>
{
    private const string PortSetting = "Lab:Rabbit:Port";

    // What fails stays in hand, as if the process had ended; nothing tries it again in that life.
    private static readonly BusPatience Mortal = BusLab.Alert with { FirstRetry = TimeSpan.FromMinutes(1), LongestRetry = TimeSpan.FromMinutes(1) };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(36)]
    public async Task Message_WhenItCannotBeRead_IsParkedByWayOfTheDeadLetters()
    {
        await using var lab = await Recovery.StartAsync(broker, BusLab.Alert);

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
        var settings = await broker.SettingsAsync();
        await using var victim = new BusLab(settings, Mortal);
        await DieWithInHandAsync(victim, 1);

        await TakeAndDropAsync();
        victim.Settings[PortSetting] = settings[PortSetting];
        victim.Handling.OnMessage = _ => Task.CompletedTask;
        await victim.StartAsync();
        await victim.UntilAsync(async () => (await victim.ParkedAsync()).Count == 1, "parked");
        var parked = (await victim.ParkedAsync())[0];
        Assert.Equal("LabPipeline.Contracts.V1.FileRefused", parked.Type);
        await victim.ReplayAsync(parked);

        await victim.AllHandledAsync();
        await victim.AssertEachOnceAsync();
    }

    [Fact]
    [Shows(35)]
    public async Task Messages_WhenOneOfThemEndsTheirProcessEachTime_AreHandledAndOnlyThatOneIsParked()
    {
        var settings = await broker.SettingsAsync();
        await using var victim = new BusLab(settings, Mortal);
        await DieWithInHandAsync(victim, 20);

        var deaths = 1;
        for (var handled = 0; handled < victim.Sent - 1; deaths++)
        {
            Assert.True(deaths < RabbitTopology.DeliveryLimit, $"{handled} handled in {deaths} lives.");
            handled = await DieAsync(victim, () => PoisonedAsync(victim));
        }

        output.WriteLine($"all others handled in {deaths} lives");
        await TakeAndDropAsync();
        victim.Settings[PortSetting] = settings[PortSetting];
        await victim.StartAsync();
        await victim.UntilAsync(async () => (await victim.ParkedAsync()).Count > 0, "the poison parked");

        var parked = Assert.Single(await victim.ParkedAsync());
        Assert.Contains("\"FileId\":1,", parked.Body, StringComparison.Ordinal);
        Assert.Contains("gave up after 20 deliveries", parked.Reason, StringComparison.Ordinal);
        Assert.Equal(Enumerable.Range(2, 19), await victim.EffectsAsync());
    }

    /// <summary>As a process does that dies with all messages in hand, until the broker gives up on the one that came back most often: connection gone, no answer.</summary>
    private async Task TakeAndDropAsync()
    {
        uint given = 0;
        for (var times = 0; given == 0; times++)
        {
            Assert.True(times < 500, "The broker does not give up.");
            await broker.WithChannelAsync(async channel =>
            {
                while (await channel.BasicGetAsync(NotingConsumer.Endpoint, autoAck: false) is not null)
                {
                    // One more in hand; one that was handled and not acknowledged may be among them.
                }

                given = (await channel.QueueDeclarePassiveAsync(RabbitTopology.DeadLetters)).MessageCount;
            });
        }
    }

    /// <summary>The first life: as many of <paramref name="count"/> messages as a process takes are in its hand when it ends, none handled.</summary>
    private Task<int> DieWithInHandAsync(BusLab victim, int count) => DieAsync(victim, async () =>
    {
        victim.Handling.OnMessage = _ => throw new InvalidOperationException("the process has ended");
        await victim.SendAsync(count);
        await victim.UntilAsync(async () => await victim.UnpublishedAsync() == 0 && victim.Handling.Tries >= Math.Min(count, 8), "all with the broker, some in hand");
    });

    /// <summary>One life of the process, which ends with its connections after <paramref name="live"/>.</summary>
    /// <returns>How many messages have had their effect by then.</returns>
    private async Task<int> DieAsync(BusLab victim, Func<Task> live)
    {
        await using (var network = new TcpProxy(broker.Port))
        {
            victim.Settings[PortSetting] = network.Port.ToString(CultureInfo.InvariantCulture);
            await victim.StartAsync();
            await live();
        }

        var handled = (await victim.EffectsAsync()).Count;
        await victim.StopAsync();
        return handled;
    }

    /// <summary>Ends when the first message sent comes to its consumer; from then on nothing takes effect.</summary>
    private static Task PoisonedAsync(BusLab victim)
    {
        var death = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        victim.Handling.OnArrival = message => _ = message.FileId == 1 && death.TrySetResult();
        victim.Handling.OnMessage = _ => death.Task.IsCompleted ? throw new InvalidOperationException("the process has ended") : Task.CompletedTask;
        return death.Task.WaitAsync(TimeSpan.FromSeconds(60), Stop);
    }
}
