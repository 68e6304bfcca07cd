using LabPipeline.Warehouse;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting.Bus.Rabbit;

/// <summary>The bus of a laboratory whose services are processes of their own.</summary>
internal sealed class RabbitTransport(
    IEnumerable<IEndpointConsumer> consumers,
    IOptions<RabbitOptions> options,
    LabWarehouse warehouse,
    BusPatience patience,
    TimeProvider time,
    IHostEnvironment environment,
    ILogger<RabbitTransport> log) : IBusTransport
{
    private readonly IReadOnlyList<IEndpointConsumer> _consumers = [.. consumers];
    private readonly RabbitAddress _address = new(options.Value, patience, environment.ApplicationName);

    public bool EndsHere => false;

    // Enough to hide the broker's answer time; more only made the client wait on itself.
    public int InFlight => 200;

    public IBusLine Open()
    {
        var sockets = new RabbitSockets();
        return new RabbitLine(_consumers, _address, sockets, new RabbitProbe(_address, sockets, warehouse, patience, time, log), patience, time, log);
    }
}
