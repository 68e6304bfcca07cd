using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Health;
using LabPipeline.Notifier.Channels;
using LabPipeline.Notifier.Deliveries;
using LabPipeline.Notifier.Settings;
using LabPipeline.Warehouse;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace LabPipeline.Notifier;

/// <summary>Tells people and programs of quality alerts.</summary>
public sealed class NotifierModule : ILabModule
{
    public string Name => "notifier";

    public void AddServices(IHostApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddOptions<NotifierOptions>()
            .Bind(builder.Configuration.GetSection(NotifierOptions.Section), binder => binder.ErrorOnUnknownConfiguration = true)
            .ValidateOnStart();
        services.AddSingleton<IValidateOptions<NotifierOptions>, NotifierOptionsValidator>();
        services.TryAddSingleton<IHostResolver, SystemHostResolver>();
        services.AddSingleton<DeliverySignal>();
        services.AddSingleton(provider => new ChannelSet(new ChannelFactory(
            provider.GetRequiredService<IOptions<NotifierOptions>>().Value,
            provider.GetRequiredService<IOptions<LabOptions>>().Value.DataFolder,
            provider.GetRequiredService<IHostResolver>(),
            provider.GetRequiredService<TimeProvider>()).Create()));
        services.AddSingleton<DeliveryWatch>();
        services.AddSingleton(provider => new DeliveryWorker(
            provider.GetRequiredService<ChannelSet>().All.Select(channel => CourierOf(channel, provider)),
            provider.GetRequiredService<DeliveryWatch>(),
            provider.GetRequiredService<LabWarehouse>(),
            provider.GetRequiredService<TimeProvider>()));
        services.AddHostedService<ChannelRegister>();
        services.AddHostedService(provider => provider.GetRequiredService<DeliveryWorker>());
        services.AddHostedService<ChannelTestWorker>();
        services.AddServicePulse(Name);
    }

    public void AddConsumers(IServiceCollection services)
    {
        services.AddOnceConsumer<QcAlertRaisedConsumer, QcAlertRaised>(QcAlertRaisedConsumer.Endpoint);
        services.AddOnceConsumer<QcAlertClearedConsumer, QcAlertCleared>(QcAlertClearedConsumer.Endpoint);
    }

    private static ChannelCourier CourierOf(IAlertChannel channel, IServiceProvider provider) => new(
        channel,
        provider.GetRequiredService<LabWarehouse>(),
        provider.GetRequiredService<DeliverySignal>(),
        provider.GetRequiredService<TimeProvider>(),
        Random.Shared,
        provider.GetRequiredService<ILogger<ChannelCourier>>());
}
