using System.Data.Common;
using LabPipeline.Warehouse;
using LabPipeline.Warehouse.Machinery;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabPipeline.Hosting.Health;

/// <summary>The sign of life of a service that has no folder to look through: written while the warehouse takes it.</summary>
internal sealed class ServicePulse(string service, LabWarehouse warehouse, TimeProvider time, ILogger<ServicePulse> log) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var startedAt = time.GetUtcNow();
        while (!stoppingToken.IsCancellationRequested)
        {
            var now = time.GetUtcNow();
            var beat = new Heartbeat { Service = service, StartedAt = startedAt, BeatAt = now, CaughtUpAt = now };
            try
            {
                await warehouse.WriteAsync(session => HeartbeatStore.BeatAsync(session, beat), stoppingToken).ConfigureAwait(false);
            }
            catch (DbException exception)
            {
                log.LogWarning(exception, "HeartbeatDelayed {Service}", service);
            }

            await Task.Delay(Every, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
