using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Hosting;

/// <summary>One service of the pipeline: it runs alone in its own process or beside the others in one.</summary>
public interface ILabModule
{
    /// <summary>Name in logs, heartbeats and queue prefixes: lower case, such as <c>quality</c>.</summary>
    string Name { get; }

    void AddServices(IHostApplicationBuilder builder);

    void AddConsumers(IServiceCollection services);
}
