using LabPipeline.Contracts.V1;
using LabPipeline.Hosting.Bus;
using LabPipeline.Warehouse;

namespace LabPipeline.Quality.Evaluation;

/// <summary>A plan was loaded: evaluates the samples whose readings had waited for it, their runs, and the files they came in.</summary>
public sealed class TrialPlanLoadedConsumer(LabWarehouse warehouse, RelaySignal relay, TimeProvider time, QualityEvaluation evaluation)
    : OnceConsumer<TrialPlanLoaded>(warehouse, relay, time)
{
    public const string Endpoint = "quality-trial-plan-loaded";

    protected override string ConsumerName => Endpoint;

    protected override async Task HandleAsync(TrialPlanLoaded message, WarehouseSession session, DateTimeOffset now)
    {
        var controlled = await ControlEvidenceStore.ListRunsAsync(session, message.JoinedBarcodes, fileId: null).ConfigureAwait(false);
        var doubted = await evaluation.ControlsAsync(session, controlled, now).ConfigureAwait(false);
        await evaluation.SamplesAsync(session, [.. message.JoinedBarcodes.Union(doubted)], now).ConfigureAwait(false);
        await evaluation.OrdersAsync(session, message.JoinedBarcodes, now).ConfigureAwait(false);
        var runs = await RunEvidenceStore.ListWeighingRunsAsync(session, message.JoinedBarcodes, fileId: null).ConfigureAwait(false);
        await evaluation.RunsAsync(session, runs, now).ConfigureAwait(false);
        await evaluation.FilesAsync(session, message.FileIds, now).ConfigureAwait(false);
    }
}
