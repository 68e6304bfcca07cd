using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing;
using RabbitMQ.Client;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>The broker ends as if the power went, and comes back on what was on its disk.</summary>
public sealed class BrokerKilledTests(RabbitFixture broker, ITestOutputHelper output) : IClassFixture<RabbitFixture>
{
    private const string Unreadable = "{ not an envelope";

    [Fact]
    [Shows(31)]
    public async Task Messages_WhenTheBrokerIsKilledUnderLoad_AllArriveAndTheBusRecoversByItself()
    {
        await using var lab = await Recovery.StartSettledAsync(broker, BusLab.Brisk);
        var node = broker.Node();

        await Recovery.UnderLoadAsync(lab, node.KillAsync);
        await lab.SendAsync(100);
        await node.StartAsync();

        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(32)]
    public async Task Messages_WhenTheBrokerIsKilledWhileItTakesNone_AllArrive()
    {
        await using var lab = await Recovery.StartSettledAsync(broker, BusLab.Brisk);
        var node = broker.Node();
        await node.ControlAsync("set_disk_free_limit", "9000GB");
        await lab.SendAsync(100);
        await lab.UntilAsync(() => Task.FromResult(lab.Bus.Condition.Reason.Contains("takes no messages", StringComparison.Ordinal)), "the refusal noticed");

        await node.KillAsync();
        await node.StartAsync();

        await Recovery.AssertAsync(lab, output);
    }

    [Fact]
    [Shows(36)]
    public async Task Messages_WhenTheBrokerIsKilledWhileItMovesThemToTheDeadLetters_AreParkedOnceEach()
    {
        await using var lab = await Recovery.StartSettledAsync(broker, BusLab.Alert);
        var node = broker.Node();
        var ids = Enumerable.Range(0, 300).Select(_ => Guid.NewGuid()).Order().ToList();
        await broker.WithChannelAsync(channel => Task.WhenAll(ids.Select(id => PublishUnreadableAsync(channel, id))));
        await lab.SendAsync(100);
        await lab.UntilAsync(async () => (await lab.ParkedAsync()).Count >= 20, "some parked");

        await node.KillAsync();
        var before = (await lab.ParkedAsync()).Count;
        Assert.InRange(before, 20, ids.Count - 50);
        await node.StartAsync();
        await lab.UntilAsync(async () => (await lab.ParkedAsync()).Count >= ids.Count, "all parked");
        await lab.AllHandledAsync();
        await lab.UntilAsync(IsEmptyAsync, "nothing left on the broker");

        var parked = await lab.ParkedAsync();
        output.WriteLine($"{before} parked before, {parked.Count} after, {parked.Count(message => message.TimesParked > 1)} of them came twice");
        Assert.Equal(ids, parked.Select(message => message.MessageId).Order());
        Assert.All(parked, message => Assert.Equal((NotingConsumer.Endpoint, Unreadable), (message.Endpoint, message.Body)));
        await lab.AssertEachOnceAsync();
    }

    private static Task PublishUnreadableAsync(IChannel channel, Guid id) => channel.BasicPublishAsync(
        "", NotingConsumer.Endpoint, mandatory: true, new BasicProperties { MessageId = id.ToString(), Persistent = true }, System.Text.Encoding.UTF8.GetBytes(Unreadable)).AsTask();

    private async Task<bool> IsEmptyAsync()
    {
        var left = 0u;
        await broker.WithChannelAsync(async channel =>
        {
            left = await channel.MessageCountAsync(NotingConsumer.Endpoint) + await channel.MessageCountAsync(RabbitTopology.DeadLetters);
        });
        return left == 0;
    }
}
