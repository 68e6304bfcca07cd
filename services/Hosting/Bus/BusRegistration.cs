using Microsoft.Extensions.DependencyInjection;

namespace LabPipeline.Hosting.Bus;

/// <summary>Registers a consumer under an explicit endpoint name.</summary>
public static class BusRegistration
{
    /// <param name="services">The process being set up.</param>
    /// <param name="endpoint">Name of a queue in <see cref="EndpointCatalogue"/>; also the inbox name.</param>
    public static void AddOnceConsumer<TConsumer, TMessage>(this IServiceCollection services, string endpoint)
        where TConsumer : OnceConsumer<TMessage>
        where TMessage : class
    {
        services.AddTransient<TConsumer>();
        services.AddSingleton(new ConsumerEntry(typeof(TMessage).FullName!, endpoint));
        services.AddSingleton<IEndpointConsumer>(provider => new EndpointConsumer<TConsumer, TMessage>(
            EndpointCatalogue.Get(endpoint, typeof(TMessage)), provider, provider.GetRequiredService<MessageDelivery>()));
    }
}
