using LabPipeline.Notifier.Routing;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Channels;
using Microsoft.Extensions.Hosting;

namespace LabPipeline.Notifier.Channels;

/// <summary>Writes down at the start which channels the settings name, so that a program without these settings can show and test them.</summary>
internal sealed class ChannelRegister(ChannelSet channels, LabWarehouse warehouse, TimeProvider time) : IHostedService
{
    public Task StartAsync(CancellationToken cancellationToken) => warehouse.WriteAsync(
        session => NoticeChannelStore.ReplaceAsync(session, channels.Policies.Select(policy => new NoticeChannel
        {
            Name = policy.Name,
            Levels = string.Join(", ", policy.Levels.Order().Select(AlertLevels.NameOf)),
            NotedAt = time.GetUtcNow(),
        })),
        cancellationToken);

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
