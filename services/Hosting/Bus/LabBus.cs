using MassTransit;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Hosting.Bus;

/// <summary>The bus: in this process when everything runs together.</summary>
internal static class LabBus
{
    private const int Retries = 5;

    private static readonly TimeSpan FirstRetry = TimeSpan.FromMilliseconds(200);

    private static readonly TimeSpan LongestRetry = TimeSpan.FromSeconds(10);

    public static void Add(IHostApplicationBuilder builder, IReadOnlyList<ILabModule> modules)
    {
        builder.Services.AddMassTransit(bus =>
        {
            bus.DisableUsageTelemetry();
            foreach (var module in modules)
            {
                module.AddConsumers(bus);
            }

            bus.UsingInMemory((context, transport) =>
            {
                transport.UseMessageRetry(retry => retry.Exponential(Retries, FirstRetry, LongestRetry, FirstRetry));
                transport.ConfigureEndpoints(context);
            });
        });
        builder.Services.AddSingleton<ConsumerCatalogue>();
        builder.Services.AddSingleton<RelaySignal>();
        builder.Services.AddHostedService<OutboxRelay>();
    }
}
