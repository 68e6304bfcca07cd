namespace LabPipeline.Hosting.Bus;

/// <summary>The bus of a laboratory that runs everything in one process: nothing to install, nothing kept but in the outbox.</summary>
internal sealed class InProcessTransport(IEnumerable<IEndpointConsumer> consumers, BusPatience patience, TimeProvider time) : IBusTransport
{
    private readonly IReadOnlyList<IEndpointConsumer> _consumers = [.. consumers];

    public bool EndsHere => true;

    public int InFlight => 1;

    public IBusLine Open() => new InProcessLine(_consumers, patience, time);
}
