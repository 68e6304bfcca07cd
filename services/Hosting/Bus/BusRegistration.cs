using MassTransit;
using Microsoft.Extensions.DependencyInjection;

namespace LabPipeline.Hosting.Bus;

/// <summary>Registers a consumer under an explicit endpoint name.</summary>
public static class BusRegistration
{
    /// <param name="bus">The bus being set up.</param>
    /// <param name="endpoint">Queue name with the service's prefix, such as <c>quality-readings-recorded</c>; also the inbox name.</param>
    public static void AddOnceConsumer<TConsumer, TMessage>(this IBusRegistrationConfigurator bus, string endpoint)
        where TConsumer : OnceConsumer<TMessage>
        where TMessage : class
    {
        bus.AddConsumer<TConsumer>().Endpoint(configure => configure.Name = endpoint);
        bus.AddSingleton(new ConsumerEntry(typeof(TMessage).FullName!, endpoint));
    }
}
