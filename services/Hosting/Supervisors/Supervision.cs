using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.Systemd;

namespace LabPipeline.Hosting.Supervisors;

/// <summary>Lets a service manager start, stop and watch the process: systemd on Linux, the service control manager on Windows; without one nothing changes.</summary>
internal static class Supervision
{
    // Set by systemd where the unit has WatchdogSec.
    private const string WatchdogVariable = "WATCHDOG_USEC";

    public static void Add(IHostApplicationBuilder builder)
    {
        builder.Services.AddSystemd();
        builder.Services.AddWindowsService(options => options.ServiceName = builder.Environment.ApplicationName);
        if (PatienceOf(Environment.GetEnvironmentVariable(WatchdogVariable)) is { } patience)
        {
            builder.Services.AddHostedService(services => new WatchdogPulse(
                services.GetService<ISystemdNotifier>(), patience / 2, services.GetRequiredService<TimeProvider>()));
        }
    }

    private static TimeSpan? PatienceOf(string? microseconds) =>
        long.TryParse(microseconds, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value > 0 ? TimeSpan.FromMicroseconds(value) : null;
}
