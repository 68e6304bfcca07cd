using LabPipeline.Warehouse.Schema;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace LabPipeline.Board.Serving;

/// <summary>Ready means: the warehouse can be read and has this program's schema.</summary>
internal sealed class WarehouseCheck(Migrator migrator) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        await migrator.IsNewestAsync(cancellationToken)
            ? HealthCheckResult.Healthy()
            : HealthCheckResult.Unhealthy("The warehouse has another schema than this program; start the newest program again.");
}
