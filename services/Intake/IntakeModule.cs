using LabPipeline.Hosting;
using LabPipeline.Intake.Keeping;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Intake;

/// <summary>The part every intake service shares; each kind of instrument adds what is special to it.</summary>
public abstract class IntakeModule(IntakeKind kind) : ILabModule
{
    public string Name => kind.ServiceName;

    public IntakeKind Kind => kind;

    public void AddServices(IHostApplicationBuilder builder)
    {
        builder.Services.AddOptions<IntakeOptions>().Bind(builder.Configuration.GetSection(IntakeOptions.Section)).ValidateOnStart();
        builder.Services.TryAddEnumerable(ServiceDescriptor.Singleton<IValidateOptions<IntakeOptions>, IntakeOptionsValidator>());

        // Once a process, however many kinds it runs.
        builder.Services.TryAddEnumerable(ServiceDescriptor.Singleton<IHostedService, WarehouseKeeper>());

        // One process may run several kinds, so each worker is its own registration.
        builder.Services.AddSingleton<IHostedService>(services => ActivatorUtilities.CreateInstance<IntakeWorker>(services, kind));
    }

    public void AddConsumers(IServiceCollection services)
    {
        // Intake only tells; it listens to nobody.
    }
}
