using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace LabPipeline.Board.Serving;

/// <summary>Measurements and traces of the board: always to be read at /metrics with a key, and sent on where <see cref="BoardOptions.Telemetry"/> says so.</summary>
internal static class Telemetry
{
    public const string MetricsPath = "/metrics";

    private const string ServiceName = "labpipeline-board";

    public static void Add(WebApplicationBuilder builder)
    {
        var target = builder.Configuration[$"{BoardOptions.Section}:{nameof(BoardOptions.Telemetry)}"];
        var endpoint = Uri.TryCreate(target, UriKind.Absolute, out var uri) ? uri : null;
        builder.Services.AddHostedService<LabMeter>();
        builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService(ServiceName))
            .WithMetrics(metrics =>
            {
                metrics.AddMeter(LabMeter.Name).AddAspNetCoreInstrumentation().AddRuntimeInstrumentation().AddPrometheusExporter();
                if (endpoint is not null)
                {
                    metrics.AddOtlpExporter(exporter => exporter.Endpoint = endpoint);
                }
            })
            .WithTracing(traces =>
            {
                if (endpoint is not null)
                {
                    traces.AddAspNetCoreInstrumentation().AddOtlpExporter(exporter => exporter.Endpoint = endpoint);
                }
            });
    }
}
