using LabPipeline.Hosting.Bus;
using LabPipeline.Testing;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>The broker is stopped as its service manager does it, and comes back.</summary>
public sealed class BrokerStoppedTests(RabbitFixture broker, ITestOutputHelper output) : IClassFixture<RabbitFixture>
{
    // After ten seconds it has been at its longest for several tries.
    private static readonly BusPatience Patience = BusLab.Brisk with { LongestRebuildPause = TimeSpan.FromSeconds(1) };

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [Shows(31)]
    [InlineData(2)]
    [InlineData(10)]
    public async Task Messages_WhenTheBrokerIsStoppedUnderLoad_AllArriveAndTheBusRecoversByItself(int secondsDown)
    {
        await using var lab = await Recovery.StartAsync(broker, Patience);
        var node = broker.Node();

        await Recovery.UnderLoadAsync(lab, node.StopAsync);
        await Task.Delay(TimeSpan.FromSeconds(secondsDown), Stop);
        await lab.SendAsync(100);
        await node.StartAsync();

        await Recovery.AssertAsync(lab, output);
    }
}
