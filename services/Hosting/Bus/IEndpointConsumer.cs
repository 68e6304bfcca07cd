using MassTransit;

namespace LabPipeline.Hosting.Bus;

/// <summary>A consumer of this process that can be attached to a queue, again for each new bus.</summary>
public interface IEndpointConsumer
{
    LabEndpoint Endpoint { get; }

    /// <param name="endpoint">The receiving end being built.</param>
    /// <param name="pulse">Told of every delivery.</param>
    /// <param name="stopped">Cancelled when the bus it belongs to is given up.</param>
    void Attach(IReceiveEndpointConfigurator endpoint, EndpointPulse pulse, CancellationToken stopped);
}
