using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Supervisors;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Schema;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Hosting;

/// <summary>Puts modules, warehouse and bus together into one host: the same for a single service and for all in one process.</summary>
public static class LabHost
{
    /// <summary>Adds everything <paramref name="modules"/> need to <paramref name="builder"/>.</summary>
    public static void Compose(IHostApplicationBuilder builder, params ILabModule[] modules)
    {
        ComposeReader(builder);
        LabBus.Add(builder, modules);
        foreach (var module in modules)
        {
            module.AddServices(builder);
        }
    }

    /// <summary>Adds settings, warehouse and logging, and no bus: for a process that only looks.</summary>
    /// <remarks>A bus would bring the outbox relay, which hands messages to this process alone and marks them as published.</remarks>
    public static void ComposeReader(IHostApplicationBuilder builder)
    {
        builder.Services.AddOptions<LabOptions>()
            .Bind(builder.Configuration.GetSection(LabOptions.Section))
            .ValidateOnStart();
        builder.Services.AddSingleton<IValidateOptions<LabOptions>, LabOptionsValidator>();
        builder.Services.AddOptions<WarehouseOptions>()
            .Bind(builder.Configuration.GetSection(LabOptions.Section))
            .ValidateOnStart();
        builder.Services.AddSingleton<IValidateOptions<WarehouseOptions>, WarehouseOptionsValidator>();
        builder.Services.TryAddSingleton(TimeProvider.System);
        builder.Services.TryAddSingleton(services => WarehouseDialects.Create(
            services.GetRequiredService<IOptions<LabOptions>>().Value, services.GetRequiredService<IOptions<WarehouseOptions>>().Value));
        builder.Services.AddSingleton<LabWarehouse>();
        builder.Services.AddSingleton<Migrator>();
        LabLogging.Add(builder);
        Supervision.Add(builder);
    }

    /// <summary>Creates the folders and brings the warehouse to the newest schema; called before the host starts.</summary>
    /// <exception cref="OptionsValidationException">The settings have faults, all of which are in the message.</exception>
    public static async Task PrepareAsync(IServiceProvider services, CancellationToken cancellationToken)
    {
        CheckSettings(services);
        var options = services.GetRequiredService<IOptions<LabOptions>>().Value;
        var folder = Directory.CreateDirectory(Path.GetDirectoryName(options.WarehouseFile)!);
        if (services.GetRequiredService<IOptions<WarehouseOptions>>().Value.UsesSqlite)
        {
            WarehousePlace.AssertLocal(folder.FullName, WarehousePlace.DriveOf(folder.FullName));
        }

        await services.GetRequiredService<Migrator>().MigrateAsync(cancellationToken).ConfigureAwait(false);
    }

    /// <summary>Runs the host until it is told to stop, also when that happens while it is still starting.</summary>
    public static async Task RunAsync(IHost host, CancellationToken cancellationToken)
    {
        var lifetime = host.Services.GetRequiredService<IHostApplicationLifetime>();
        try
        {
            await host.StartAsync(cancellationToken).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (lifetime.ApplicationStopping.IsCancellationRequested || cancellationToken.IsCancellationRequested)
        {
            // What had started ends as at any other time.
            await host.StopAsync(CancellationToken.None).ConfigureAwait(false);
            return;
        }

        await host.WaitForShutdownAsync(cancellationToken).ConfigureAwait(false);
    }

    /// <summary>The faults of all sections in one exception.</summary>
    private static void CheckSettings(IServiceProvider services)
    {
        try
        {
            services.GetRequiredService<IStartupValidator>().Validate();
        }
        catch (AggregateException several)
        {
            var faults = several.InnerExceptions.OfType<OptionsValidationException>().SelectMany(exception => exception.Failures).Distinct();
            throw new OptionsValidationException(LabOptions.Section, typeof(LabOptions), faults);
        }
    }
}
