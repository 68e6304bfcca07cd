using LabPipeline.Hosting;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Station;

/// <summary>One host with every service, over one data folder.</summary>
public static class StationHost
{
    /// <param name="dataFolder">The data folder.</param>
    /// <param name="settings">Settings that differ from the defaults, by configuration key.</param>
    public static IHost Build(string dataFolder, IEnumerable<KeyValuePair<string, string?>>? settings = null)
    {
        var builder = Host.CreateApplicationBuilder();
        builder.Configuration.AddInMemoryCollection(settings ?? []);
        builder.Configuration.AddInMemoryCollection([new($"{LabOptions.Section}:{nameof(LabOptions.DataFolder)}", dataFolder)]);
        LabHost.Compose(builder, StationModules.All());
        return builder.Build();
    }
}
