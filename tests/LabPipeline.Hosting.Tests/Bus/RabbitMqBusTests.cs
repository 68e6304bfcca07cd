using Dapper;
using LabPipeline.Hosting.Bus;

namespace LabPipeline.Hosting.Tests.Bus;

[Collection(SharedBroker.Name)]
public sealed class RabbitMqBusTests(RabbitFixture broker) : BusBehaviour
{
    [Fact]
    public async Task Relay_WhileAnotherMachineHoldsTheLease_LeavesTheOutboxToItAndTakesOverWhenItExpires()
    {
        await using var lab = await StartAsync();
        await lab.SendAsync(1);
        await lab.AllHandledAsync();
        var expires = DateTimeOffset.UtcNow.AddSeconds(15);
        await lab.Warehouse.WriteAsync(
            session => session.Connection.ExecuteAsync(
                "update lease set holder = 'elsewhere/7/20260101T000000', expires_at = @expires where name = @name", new { expires, name = OutboxRelay.Lease }, session.Transaction),
            Stop);

        // The relay asks for its lease every five seconds.
        await Task.Delay(TimeSpan.FromSeconds(7), Stop);
        await lab.SendAsync(10);
        await Task.Delay(TimeSpan.FromSeconds(3), Stop);
        Assert.Equal(10, await lab.UnpublishedAsync());

        await lab.AllHandledAsync();
        Assert.True(DateTimeOffset.UtcNow >= expires, "Taken over before the other's lease expired.");
        await lab.AssertEachOnceAsync();
    }

    private protected override async Task<BusLab> StartAsync() => await BusLab.StartAsync(await broker.SettingsAsync());
}
