using LabPipeline.Warehouse;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Hosting.Health;

/// <summary>Lets a service leave signs of life under its own name, also beside others in one process.</summary>
public static class ServicePulseRegistration
{
    public static void AddServicePulse(this IServiceCollection services, string service) => services.AddSingleton<IHostedService>(provider => new ServicePulse(
        service,
        provider.GetRequiredService<LabWarehouse>(),
        provider.GetRequiredService<TimeProvider>(),
        provider.GetRequiredService<ILogger<ServicePulse>>()));
}
