using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.Systemd;

namespace LabPipeline.Hosting.Supervisors;

/// <summary>Tells systemd that the process still runs its work; when it falls silent, systemd ends and restarts it.</summary>
internal sealed class WatchdogPulse(ISystemdNotifier? notifier, TimeSpan every, TimeProvider time) : BackgroundService
{
    private static readonly ServiceState Alive = new("WATCHDOG=1");

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (notifier is { IsEnabled: true } && !stoppingToken.IsCancellationRequested)
        {
            notifier.Notify(Alive);
            await Task.Delay(every, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }
}
