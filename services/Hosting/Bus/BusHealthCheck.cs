using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace LabPipeline.Hosting.Bus;

/// <summary>A bus that is down or blocked is a degraded service, not a dead one: intake goes on and the outbox keeps every message.</summary>
public sealed class BusHealthCheck(LabBusHost bus) : IHealthCheck
{
    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        var condition = bus.Condition;
        return Task.FromResult(condition.IsUp
            ? HealthCheckResult.Healthy("The bus answers.")
            : HealthCheckResult.Degraded(FormattableString.Invariant($"The bus is down since {condition.Since.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC: {condition.Reason}")));
    }
}
