namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>The broker ends as if the power went, and comes back on what was on its disk.</summary>
public sealed class BrokerKilledTests(RabbitFixture broker, ITestOutputHelper output) : IClassFixture<RabbitFixture>
{
    [Fact]
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
}
