using System.Globalization;
using LabPipeline.Hosting.Bus.Rabbit;
using LabPipeline.Testing;
using Microsoft.Extensions.Logging.Abstractions;

namespace LabPipeline.Hosting.Tests.Bus;

[Collection(SharedBroker.Name)]
public sealed class RabbitProbeTests(RabbitFixture broker)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Find_WhenTheBrokerKnowsNoSuchQueue_SaysSoAndGoesOnAnswering()
    {
        var settings = await broker.SettingsAsync();
        await using var scratch = await ScratchWarehouse.CreateAsync();
        var options = new RabbitOptions
        {
            Host = settings["Lab:Rabbit:Host"]!,
            Port = int.Parse(settings["Lab:Rabbit:Port"]!, CultureInfo.InvariantCulture),
            VirtualHost = settings["Lab:Rabbit:VirtualHost"]!,
            User = settings["Lab:Rabbit:User"]!,
            PasswordVariable = settings["Lab:Rabbit:PasswordVariable"]!,
        };
        var sockets = new RabbitSockets();
        var probe = new RabbitProbe(new RabbitAddress(options, BusLab.Brisk, "test"), sockets, scratch.Warehouse, BusLab.Brisk, TimeProvider.System, NullLogger.Instance);
        await probe.OpenAsync(Stop);

        // The broker closes the channel of the question, and only that.
        Assert.Null(await probe.FindQueueAsync("no-such-queue", Stop));
        Assert.Equal(0u, (await probe.FindQueueAsync(NotingConsumer.Endpoint, Stop))!.MessageCount);
        Assert.False(probe.Lost.IsCompleted);
        sockets.Cut();
    }
}
