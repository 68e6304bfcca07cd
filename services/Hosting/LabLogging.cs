using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;
using Serilog;
using Serilog.Events;
using Serilog.Formatting.Compact;

namespace LabPipeline.Hosting;

/// <summary>Structured logs: JSON lines in the data folder, and plain lines on the console when asked for.</summary>
internal static class LabLogging
{
    private const long FileLimit = 20 * 1024 * 1024;

    // Every process has its own file, so that processes that share a data folder do not write into each other's lines.
    private static string LogNameOf(string application) => application[(application.LastIndexOf('.') + 1)..].ToLowerInvariant();

    // The library's one logger for all would give the lines of several hosts in one process to the newest.
    public static void Add(IHostApplicationBuilder builder) => builder.Services.AddSerilog((services, logger) =>
    {
        var options = services.GetRequiredService<IOptions<LabOptions>>().Value;
        logger.MinimumLevel.Information()
            .MinimumLevel.Override("MassTransit", LogEventLevel.Warning)
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .Enrich.FromLogContext()
            .Enrich.With<VisibleProperties>()
            .WriteTo.File(
                new CompactJsonFormatter(),
                Path.Combine(options.LogFolder, LogNameOf(builder.Environment.ApplicationName) + "-.jsonl"),
                rollingInterval: RollingInterval.Day,
                rollOnFileSizeLimit: true,
                fileSizeLimitBytes: FileLimit,
                retainedFileCountLimit: 30,
                shared: true);
        if (options.LogToConsole)
        {
            logger.WriteTo.Console(formatProvider: CultureInfo.InvariantCulture);
        }
    },
    preserveStaticLogger: true);
}
