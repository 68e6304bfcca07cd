using System.Reflection;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using MassTransit;
using MassTransit.Transports;
using MassTransit.UsageTracking;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Conventions.Tests;

/// <summary>Endpoints have names of their own with the service's prefix, and the bus reports to nobody.</summary>
public sealed class BusRulesTests
{
    [Fact]
    public void Consumers_WhenRegistered_HaveExplicitEndpointNamesWithTheirServicesPrefix()
    {
        foreach (var module in Modules())
        {
            var builder = Host.CreateApplicationBuilder();
            LabHost.Compose(builder, module);
            using var host = builder.Build();
            var entries = host.Services.GetRequiredService<ConsumerCatalogue>().Entries;
            var consumers = module.GetType().Assembly.GetTypes().Where(IsConsumer).ToList();

            Assert.Equal(consumers.Count, entries.Count);
            Assert.All(entries, entry => Assert.StartsWith(module.Name + "-", entry.ConsumerName, StringComparison.Ordinal));
            Assert.Equal(entries.Count, entries.Select(entry => entry.ConsumerName).Distinct().Count());
        }
    }

    [Fact]
    public void Consumers_WhenAsked_RememberMessagesUnderTheirEndpointsName()
    {
        foreach (var type in ProductAssemblies.All.Values.SelectMany(assembly => assembly.GetTypes()).Where(IsConsumer))
        {
            var constant = type.GetField("Endpoint", BindingFlags.Public | BindingFlags.Static);

            Assert.True(constant is { IsLiteral: true }, $"{type.Name} states no constant Endpoint.");
        }
    }

    [Fact]
    public void Catalogue_WhenCompared_HoldsExactlyTheConsumersOfAllServices()
    {
        var builder = Host.CreateApplicationBuilder();
        LabHost.Compose(builder, [.. Modules()]);
        using var host = builder.Build();
        var served = host.Services.GetRequiredService<ConsumerCatalogue>().Entries.Select(entry => (entry.ConsumerName, entry.MessageType));

        Assert.Equal(EndpointCatalogue.All.Select(endpoint => (endpoint.Name, endpoint.Message.FullName!)).Order(), served.Order());
    }

    [Fact]
    public void Contracts_WhenListed_EachHaveAnEndpoint() =>
        Assert.Empty(MessageTypes.All.Except(EndpointCatalogue.All.Select(endpoint => endpoint.Message)));

    /// <summary>Only the bus library's registration in the container brings its usage report (seen in its source, version 8.5): the product must not call it.</summary>
    [Fact]
    public void Bus_WhenComposed_ReportsNoUsageToItsMakers()
    {
        var builder = Host.CreateApplicationBuilder();
        LabHost.Compose(builder, [.. Modules()]);

        Assert.DoesNotContain(builder.Services, service => service.ServiceType == typeof(IUsageTracker) || service.ServiceType == typeof(IBusInstance));
        Assert.True(new ServiceCollection().AddMassTransit(bus => bus.UsingInMemory()).Any(service => service.ServiceType == typeof(IUsageTracker)), "It would be seen here.");
    }

    private static IEnumerable<ILabModule> Modules() => ProductAssemblies.All.Values
        .SelectMany(assembly => assembly.GetTypes())
        .Where(type => type is { IsAbstract: false, IsPublic: true } && typeof(ILabModule).IsAssignableFrom(type) && type.GetConstructor([]) is not null)
        .Select(type => (ILabModule)Activator.CreateInstance(type)!);

    private static bool IsConsumer(Type type) => !type.IsAbstract && typeof(IConsumer).IsAssignableFrom(type);
}
