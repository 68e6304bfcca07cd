using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>Somebody deletes what stands on the broker, or the broker forgets it.</summary>
[Collection(SharedBroker.Name)]
public sealed class QueueTroubleTests(RabbitFixture broker, ITestOutputHelper output)
{
    // Takes the consumers out of the queue's state on the broker; their channels stay open and no client is told.
    private const string ForgetConsumers =
        $$"""
        {ok, Q} = rabbit_amqqueue:lookup(rabbit_misc:r(<<"/">>, queue, <<"{{NotingConsumer.Endpoint}}">>)),
        [ra:process_command(amqqueue:get_pid(Q), rabbit_fifo:make_checkout({element(2, C), element(1, C)}, cancel, #{})) || C <- rabbit_amqqueue:consumers(Q)].
        """;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    [Shows(33)]
    public async Task Messages_WhenAQueueIsDeleted_AllArriveInANewOne()
    {
        await using var lab = await Recovery.StartAsync(broker, BusLab.Brisk);
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        await broker.WithChannelAsync(channel => channel.QueueDeleteAsync(NotingConsumer.Endpoint));
        await lab.SendAsync(100);

        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(33)]
    public async Task Messages_WhenNoQueueIsBound_StayInTheOutboxUntilOneIs()
    {
        await using var lab = await Recovery.StartAsync(broker, BusLab.Brisk with { LookEvery = TimeSpan.FromMinutes(10) });
        await lab.SendAsync(50);
        await lab.AllHandledAsync();

        var exchange = RabbitTopology.ExchangeOf(typeof(Contracts.V1.FileRefused));
        await broker.WithChannelAsync(channel => channel.ExchangeUnbindAsync(NotingConsumer.Endpoint, exchange, ""));
        await lab.SendAsync(10);
        await Task.Delay(TimeSpan.FromSeconds(5), Stop);
        Assert.Equal(10, await lab.UnpublishedAsync());

        await broker.WithChannelAsync(channel => channel.ExchangeBindAsync(NotingConsumer.Endpoint, exchange, ""));
        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(33)]
    public async Task Binding_WhenSomebodyRemovedIt_IsDeclaredAgainByItself()
    {
        await using var lab = await Recovery.StartAsync(broker, BusLab.Brisk);
        await lab.SendAsync(10);
        await lab.AllHandledAsync();

        var exchange = RabbitTopology.ExchangeOf(typeof(Contracts.V1.FileRefused));
        await broker.WithChannelAsync(channel => channel.ExchangeUnbindAsync(NotingConsumer.Endpoint, exchange, ""));
        await lab.SendAsync(10);

        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(39)]
    public async Task Messages_WhenTheBrokerForgetsTheConsumer_AreHandledByANewOne()
    {
        await using var lab = await Recovery.StartAsync(broker, BusLab.Brisk);
        var node = broker.Node();
        await lab.SendAsync(10);
        await lab.AllHandledAsync();

        Assert.Contains("{ok,ok", await node.ControlAsync("eval", ForgetConsumers), StringComparison.Ordinal);
        await lab.SendAsync(100);

        await Recovery.AssertAsync(lab, output);
    }
}
