using System.Data.Common;
using LabPipeline.Board.Office;
using LabPipeline.Warehouse;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace LabPipeline.Board.Serving;

/// <summary>What the services behind the board leave in the warehouse. Pages are served whatever it says, so it degrades and never fails.</summary>
internal sealed class PipelineCheck(LabWarehouse warehouse, TimeProvider time) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        try
        {
            var state = await warehouse.ReadAsync(session => PipelineState.ReadAsync(session, time.GetUtcNow()), cancellationToken);
            var faults = string.Join("; ", state.Faults);
            var data = new Dictionary<string, object>(StringComparer.Ordinal)
            {
                ["secondsSinceSignOfLife"] = state.Services.ToDictionary(service => service.Beat.Service, service => Math.Round(service.Age.TotalSeconds)),
                ["unpublishedMessages"] = state.Unpublished,
                ["secondsOldestUnpublished"] = Math.Round(state.OldestUnpublished?.TotalSeconds ?? 0),
                ["parkedMessages"] = state.Parked,
            };
            return faults.Length == 0 ? HealthCheckResult.Healthy(data: data) : HealthCheckResult.Degraded(faults, data: data);
        }
        catch (DbException)
        {
            return HealthCheckResult.Degraded("The warehouse could not be asked.");
        }
    }
}
