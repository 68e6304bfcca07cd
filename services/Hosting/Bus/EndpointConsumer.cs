using MassTransit;
using Microsoft.Extensions.DependencyInjection;

namespace LabPipeline.Hosting.Bus;

/// <summary>Hands each message of a queue to a fresh <typeparamref name="TConsumer"/>.</summary>
internal sealed class EndpointConsumer<TConsumer, TMessage>(LabEndpoint endpoint, IServiceProvider services, MessageDelivery delivery) : IEndpointConsumer
    where TConsumer : OnceConsumer<TMessage>
    where TMessage : class
{
    public LabEndpoint Endpoint => endpoint;

    public void Attach(IReceiveEndpointConfigurator configurator, EndpointPulse pulse, CancellationToken stopped) =>
        configurator.Handler<TMessage>(async context =>
        {
            pulse.Enter();
            try
            {
                await delivery.HandleAsync(context, endpoint.Name, () => services.GetRequiredService<TConsumer>().Consume(context), stopped).ConfigureAwait(false);
            }
            finally
            {
                pulse.Leave();
            }
        });
}
