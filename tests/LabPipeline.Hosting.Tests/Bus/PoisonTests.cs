using LabPipeline.Hosting.Bus.Rabbit;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>Messages that cannot be read, and messages that end the process which handles them.</summary>
public sealed class PoisonTests(RabbitFixture broker, ITestOutputHelper output) : IClassFixture<RabbitFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
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
    public async Task Message_WhenItsProcessEndsEachTime_IsParkedAndCanBeReplayed()
    {
        await using var victim = await Recovery.StartAsync(broker, BusLab.Alert);
        var gate = new TaskCompletionSource();
        victim.Handling.OnMessage = _ => gate.Task;
        await victim.SendAsync(1);
        await victim.UntilAsync(() => Task.FromResult(victim.Handling.Tries == 1), "in hand");
        var stopping = victim.StopAsync();
        await Task.Delay(BusLab.Alert.Stop + TimeSpan.FromSeconds(2), Stop);
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

    [Fact]
    public async Task Messages_WhenTheirProcessEndsEachTimeWithThemInHand_AreParkedTogetherAndLostNone()
    {
        const int InHand = 8;
        await using var victim = await Recovery.StartAsync(broker, BusLab.Alert);
        var gate = new TaskCompletionSource();
        victim.Handling.OnMessage = _ => gate.Task;
        await victim.SendAsync(InHand);
        await victim.UntilAsync(() => Task.FromResult(victim.Handling.Tries > 0), "some in hand");

        // The message in hand holds the warehouse's pen, so the others go to the broker and cannot be marked as published.
        await Task.Delay(TimeSpan.FromSeconds(1), Stop);
        var stopping = victim.StopAsync();
        await Task.Delay(BusLab.Alert.Stop + TimeSpan.FromSeconds(2), Stop);
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

    /// <summary>As a process does that dies while it handles the message: connection gone, no answer.</summary>
    private async Task TakeAndDropAsync(int times)
    {
        for (var time = 0; time < times; time++)
        {
            await broker.WithChannelAsync(async channel => await channel.BasicGetAsync(NotingConsumer.Endpoint, autoAck: false));
        }
    }
}
