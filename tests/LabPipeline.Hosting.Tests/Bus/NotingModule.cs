using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Hosting.Tests.Bus;

/// <summary>One consumer and nothing else.</summary>
internal sealed class NotingModule(Handling handling) : ILabModule
{
    public string Name => "quality";

    public void AddServices(IHostApplicationBuilder builder) => builder.Services.AddSingleton(handling);

    public void AddConsumers(IServiceCollection services) => services.AddOnceConsumer<NotingConsumer, FileRefused>(NotingConsumer.Endpoint);
}
