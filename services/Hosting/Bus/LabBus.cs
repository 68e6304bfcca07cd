using LabPipeline.Hosting.Bus.Rabbit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting.Bus;

/// <summary>Puts the bus together: in this process when everything runs together, over a broker when it does not.</summary>
/// <remarks>
/// The bus library's own registration is not used: it allows one bus a process for ever, and a bus that hangs must be replaced. With it
/// stays out its usage report to its makers.
/// </remarks>
internal static class LabBus
{
    public static void Add(IHostApplicationBuilder builder, IReadOnlyList<ILabModule> modules)
    {
        var services = builder.Services;
        services.AddOptions<RabbitOptions>().Bind(builder.Configuration.GetSection(RabbitOptions.Section)).ValidateOnStart();
        services.AddSingleton<IValidateOptions<RabbitOptions>, RabbitOptionsValidator>();
        foreach (var module in modules)
        {
            module.AddConsumers(services);
        }

        services.TryAddSingleton(new BusPatience());
        services.AddSingleton<ConsumerCatalogue>();
        services.AddSingleton<RelaySignal>();
        services.AddSingleton<RunningHandlers>();
        services.AddSingleton<MessageDelivery>();
        services.AddSingleton<IBusTransport>(provider => provider.GetRequiredService<IOptions<LabOptions>>().Value.Bus == BusNames.RabbitMq
            ? ActivatorUtilities.CreateInstance<RabbitTransport>(provider)
            : ActivatorUtilities.CreateInstance<InProcessTransport>(provider));
        services.AddSingleton<LabBusHost>();
        services.AddHostedService(provider => provider.GetRequiredService<LabBusHost>());
        services.AddHostedService<OutboxRelay>();
        services.AddHealthChecks().AddCheck<BusHealthCheck>("bus");
    }
}
