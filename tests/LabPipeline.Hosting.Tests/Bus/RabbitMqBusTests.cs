namespace LabPipeline.Hosting.Tests.Bus;

[Collection(SharedBroker.Name)]
public sealed class RabbitMqBusTests(RabbitFixture broker) : BusBehaviour
{
    private protected override async Task<BusLab> StartAsync() => await BusLab.StartAsync(await broker.SettingsAsync());
}
